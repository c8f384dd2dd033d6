import { text } from '../../../calc/figure/figure.ts';
import { isKnown, type Usual } from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import { type Place, UNKNOWN } from '../../../calc/model/index.ts';
import { habitOf } from '../kit/habit.ts';
import { planOf, readingsOf } from '../kit/record-plan.ts';
import { about, share } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Of the full value of the resin. Common practice. */
const SHARE: Usual = {
  habit: 'barcol',
  what: 'share of the full hardness that a part must have',
  value: share(0.9),
  source: 'common practice',
};

export const recordBarcolLow = rule({
  name: 'record/barcol-low',
  severity: 'error',
  title: 'the laminate is softer than it must be',
  on: 'record',
  check(context) {
    const plan = planOf(context);
    if (plan === undefined) return;
    for (const reading of readingsOf(context.record, 'barcol')) {
      const on = reading.words.find((word) => word !== 'on');
      const wanted = wantedFor(plan, on);
      if (wanted === undefined || reading.amounts.length === 0) continue;
      const mean = reading.amounts.reduce((sum, { si }) => sum + si, 0) / reading.amounts.length;
      if (mean >= wanted.value - 1e-9) continue;
      const shown = { mean: about(mean), count: reading.amounts.length, wanted: about(wanted.value) };
      context.report({
        at: reading.path,
        message:
          reading.amounts.length === 1
            ? text(
                '{mean} at one place: {wanted} at least; take ten, and do not let it off the tool or into the postcure before it is there',
                shown,
              )
            : reading.amounts.length < 10
              ? text(
                  'a mean of {mean} from {count} readings: {wanted} at least; take ten, and do not let it off the tool or into the postcure before it is there',
                  shown,
                )
              : text(
                  'a mean of {mean}: {wanted} at least; do not let it off the tool or into the postcure before it is there',
                  shown,
                ),
        related: [{ at: wanted.at, message: text('{wanted} from here', shown) }],
      });
    }
  },
});

/** A check of the recipe on the same layer, else nine tenths of what the resin comes to. */
function wantedFor(
  plan: RecipeContext,
  on: string | undefined,
): { readonly value: number; readonly at: Place } | undefined {
  const check = stepsOf(plan).find(({ step: { test } }) => test?.what === 'barcol' && test.on === on)?.step;
  const limit = check?.test?.limit ?? check?.test?.low;
  if (check !== undefined && limit !== undefined && limit !== UNKNOWN)
    return { value: limit.si, at: { entry: plan.recipe.entry, path: check.path } };
  const key =
    on === undefined
      ? undefined
      : stepsOf(plan)
          .flatMap(({ layers }) => layers)
          .find(({ name, layer }) => name === on || layer.name === on)?.key;
  const name = key === undefined ? undefined : plan.ask(layerResinName, key);
  const resin = plan.bench.material(
    (name !== undefined && isKnown(name) ? name.value : plan.recipe.process?.resin) ?? '',
  );
  const full = resin?.barcol;
  return full === undefined || full.value === UNKNOWN
    ? undefined
    : { value: habitOf(plan.bench, SHARE) * full.value.si, at: full.at };
}
