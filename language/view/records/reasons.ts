import { quantity, type Text } from '../../../calc/figure/figure.ts';
import type { BuildRecord } from '../../../calc/model/index.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { type Style, say, sayText } from '../text.ts';
import type { PlanOf } from './builds.ts';
import { explainBuild } from './explain.ts';
import { partName } from './lots.ts';

/** Differences of one sort that are told one by one; of more, the newest is told and the others are summed up. */
const most = 3;
/** Builds that are named in a sum. */
const named = 6;

interface Difference {
  readonly record: BuildRecord;
  readonly words: Text;
}

/** What the differences of builds to their plans come to: those of a sort together, the newest with its figures. */
export function differenceLines(
  builds: readonly BuildRecord[],
  planOf: PlanOf,
  usualFill: number | undefined,
  style: Style,
): string[] {
  const sorts = new Map<string, Difference[]>();
  for (const record of builds)
    for (const words of explainBuild(record, planOf(record), usualFill)) {
      const sort = sorts.get(words.template);
      if (sort === undefined) sorts.set(words.template, [{ record, words }]);
      else sort.push({ record, words });
    }
  const line = ({ record, words }: Difference): string =>
    say('{build}: {words}', { build: partName(record), words: sayText(words, style) });
  return [...sorts.values()].flatMap((sort) =>
    sort.length <= most ? sort.map(line) : [...sort.slice(-1).map(line), summed(sort.slice(0, -1), style)],
  );
}

function summed(sort: readonly Difference[], style: Style): string {
  const off = sort.flatMap(({ words }) => {
    const value = words.figures.off;
    return typeof value === 'object' && 'si' in value ? [value.si] : [];
  });
  const builds = namesOf(sort.map(({ record }) => record));
  const shown = { count: sort.length, builds };
  if (off.length === 0) return say('{count} earlier builds the same way: {builds}', shown);
  const share = (si: number) => ({ ...quantity(si, NUMBER), unit: '%' });
  return say(
    '{count} earlier builds the same way, by {low} to {high}: {builds}',
    { ...shown, low: share(Math.min(...off)), high: share(Math.max(...off)) },
    style,
  );
}

/** Names of builds, the newest last; of many the newest, and how many more there are. */
export function namesOf(records: readonly BuildRecord[]): string {
  const names = records.slice(-named).map(partName).join(', ');
  return records.length <= named
    ? names
    : say('{count} more, the last {names}', { count: records.length - named, names });
}
