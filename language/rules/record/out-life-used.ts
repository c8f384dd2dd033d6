import { text } from '../../../calc/figure/figure.ts';
import { type BuildRecord, type Reading, UNKNOWN } from '../../../calc/model/index.ts';
import { TIME } from '../../../calc/quantity/index.ts';
import { amountIn, readingsOf } from '../kit/record-plan.ts';
import { aboutTime } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const recordOutLifeUsed = rule({
  name: 'record/out-life-used',
  severity: 'error',
  title: 'a lot of prepreg was out of the freezer longer than it lives',
  on: 'record',
  check(context) {
    const { record, book } = context;
    for (const reading of readingsOf(record, 'out')) {
      const name = reading.words[0];
      const time = amountIn(reading, TIME);
      const life = name === undefined ? undefined : book.material(name)?.outLife;
      if (name === undefined || time === undefined || life === undefined || life.value === UNKNOWN) continue;
      const before = earlierOuts((material, code) => book.recordsOfLot(material, code), record, name);
      const sum = before.reduce((all, each) => all + each.time, time.si);
      if (!(sum > life.value.value.si + 1e-6)) continue;
      const shown = {
        material: name,
        lot: record.lots.find((lot) => lot.material === name)?.code ?? '',
        sum: aboutTime(sum),
        life: life.value.value,
        parts: before.length + 1,
      };
      context.report({
        at: reading.path,
        message:
          before.length === 0
            ? text(
                '{material} was out of the freezer for {sum}: it lives {life} out of it; test it, and mark the part',
                shown,
              )
            : text(
                'lot {lot} of {material} was out of the freezer for {sum} in all, over {parts} parts: it lives {life} out of it; test it, and mark the part',
                shown,
              ),
        related: [
          { at: life.at, message: text('the out-life of {material}', shown) },
          ...before.map(({ entry, path, time: out, date }) => ({
            at: { entry, path },
            message: text('{out} of it on {date}', { out: aboutTime(out), date }),
          })),
        ],
      });
    }
  },
});

interface Out {
  readonly entry: string;
  readonly path: string;
  readonly date: string;
  readonly time: number;
}

/** What the records of earlier days say of the lots of this one; of the same day, those that stand before it. */
function earlierOuts(
  recordsOfLot: (material: string, code: string) => readonly BuildRecord[],
  record: BuildRecord,
  name: string,
): readonly Out[] {
  const codes = new Set(record.lots.filter(({ material }) => material === name).map(({ code }) => code));
  const seen = new Set<BuildRecord>();
  return [...codes].flatMap((code) => {
    const all = recordsOfLot(name, code);
    const own = all.findIndex(({ entry }) => entry === record.entry);
    return all.slice(0, Math.max(own, 0)).flatMap((earlier) => {
      if (seen.has(earlier)) return [];
      seen.add(earlier);
      return readingsOf(earlier, 'out').flatMap((reading) => outOf(earlier, reading, name));
    });
  });
}

function outOf(record: BuildRecord, reading: Reading, name: string): Out[] {
  const time = amountIn(reading, TIME);
  return reading.words[0] !== name || time === undefined
    ? []
    : [{ entry: record.entry, path: reading.path, date: record.date ?? '', time: time.si }];
}
