import { equivalentTime } from '../../../calc/cure/equivalent.ts';
import { text } from '../../../calc/figure/figure.ts';
import { type ProcessKind, UNKNOWN } from '../../../calc/model/index.ts';
import { needed } from '../../words/index.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { asTyped, kelvin } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Needed steps whose absence a rule of their own reports, by its name. */
export const TOLD_ELSEWHERE: Readonly<Record<string, string>> = {
  release: 'release/missing',
  tape: 'tape/missing',
  peel: 'peel/missing',
  feed: 'feed/missing',
  vent: 'vent/missing',
  bag: 'bag/missing',
  'leak test': 'vacuum/no-leak-test',
  lay: 'ply/never-laid',
};

const LINES: Readonly<Record<string, string>> = { infuse: 'infuse', demould: 'demould' };

/** Where no process says how warm it is, K: 23 degC, at which most data sheets are measured (common practice). */
const DATA_SHEET = 296.15;

/** A day at the warmth of the process, or as long as the resin stays in the tool there. Prepreg cures by a schedule of its own. */
function cureLine({ recipe: { process }, bench }: RecipeContext): string | undefined {
  if (process === undefined || process.kind === 'prepreg') return undefined;
  const warm = process.temperature?.si ?? DATA_SHEET;
  const demould = process.resin === undefined ? undefined : bench.material(process.resin)?.demould;
  const fact = demould?.find(({ value }) => value !== UNKNOWN && value.temperature !== undefined)?.value;
  const told = fact === undefined || fact === UNKNOWN ? undefined : fact;
  const speed = equivalentTime([{ from: warm, to: warm, time: 1 }], told?.temperature?.si ?? warm);
  const needs = told === undefined || typeof speed !== 'number' || speed <= 0 ? 0 : told.value.si / speed;
  return `cure ${Math.max(24, Math.ceil(needs / 3600 - 1e-6))} h at ${asTyped(kelvin(warm))}`;
}

export const orderMissingStep = rule({
  name: 'order/missing-step',
  severity: 'warning',
  title: 'a step that the process cannot do without is missing',
  on: 'recipe',
  check(context) {
    const kind: ProcessKind | undefined = context.recipe.process?.kind;
    if (kind === undefined) return;
    const steps = stepsOf(context);
    for (const { step, because } of needed[kind]) {
      if (TOLD_ELSEWHERE[step] !== undefined || firstOf(steps, step) !== undefined) continue;
      const line = step === 'cure' ? cureLine : () => LINES[step];
      const message = text('no {step}: {because}', { step, because });
      reportMissing(context, { step, kinds: [kind], message, line });
    }
  },
});
