import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { amountOf, flat, hasWord } from '../../../calc/plan/reading.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { headOf } from '../../../calc/vacuum/pump.ts';
import { drivingPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { about, asTyped, metres, pascals, share } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const HIGHEST: Usual = {
  habit: 'lift',
  what: 'how far the resin is lifted',
  value: metres(0.5),
  source: 'common practice',
};

export const flowLift = rule({
  name: 'flow/lift',
  severity: 'warning',
  title: 'the resin is lifted so high that it lacks the push',
  on: 'recipe',
  check(context) {
    const most = usual(context.bench, HIGHEST);
    const push = context.ask(drivingPressure);
    const density =
      context.recipe.process?.resin === undefined
        ? undefined
        : context.bench.material(context.recipe.process.resin)?.density?.value;
    for (const { step } of allOf(stepsOf(context), 'feed', 'vent')) {
      const clause = step.clauses.find((each) => hasWord(flat(each), 'above'));
      const rise = clause === undefined ? undefined : amountOf(flat(clause), LENGTH);
      if (clause === undefined || rise === undefined || !isKnown(most) || rise.si <= most.value + 1e-9) continue;
      const column = headOf(density === undefined || density === UNKNOWN ? 1100 : density.si, rise.si);
      if (typeof column !== 'number') continue;
      const shown = {
        name: step.name ?? step.verb,
        rise,
        takes: pascals(about(column)),
        ...(isKnown(push) ? { push: pascals(about(push.value)), part: share(about(column / push.value)) } : {}),
      };
      const right = asTyped(metres(most.value));
      context.report({
        at: clause.path,
        message: isKnown(push)
          ? text(
              '{name} lies {rise} above the pot: lifting the resin takes {takes} of the {push} that push it, {part}; set the pot higher',
              shown,
            )
          : text(
              '{name} lies {rise} above the pot: lifting the resin takes {takes} of what pushes it; set the pot higher',
              shown,
            ),
        fixes: [mendText(context, text('Set the pot {what} below', { what: right }), clause.path, TYPED_LENGTH, right)],
      });
    }
  },
});
