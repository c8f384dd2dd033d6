import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerFraction } from '../../../calc/laminate/fraction.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { drivingPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import { saidAt } from '../kit/fractions.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { mendText, TYPED_SHARE } from '../kit/mend-text.ts';
import { asTyped, pascals, share } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const HARD: Usual = {
  habit: 'hard_bag',
  what: 'pressure of a bag that bleeds a lean laminate dry',
  value: pascals(75_000),
  source: 'common practice',
};
const LEAN: Usual = {
  habit: 'lean',
  what: 'least resin by weight under a hard bag',
  value: share(0.45),
  source: 'common practice',
};

/** A share by weight as it is typed, of resin or of fibre. */
const TYPED_SHARES = new RegExp(`(?:resin|fibre)\\s+${TYPED_SHARE.source}\\s+by weight`);

export const fibreBagBleedsDry = rule({
  name: 'fibre/bag-bleeds-dry',
  severity: 'warning',
  title: 'the bag bleeds a lean laminate dry',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'bagged') return;
    const steps = stepsOf(context);
    const open = firstOf(steps, 'perforated');
    const takes = firstOf(steps, 'bleeder', 'breather');
    const pressure = valueOf(context.ask(drivingPressure));
    const hardPull = habitOf(context.bench, HARD);
    if (open === undefined || takes === undefined || pressure === undefined || pressure <= hardPull) return;
    const lean = habitOf(context.bench, LEAN);
    const told = new Set<string>();
    for (const laid of layersOf(context).filter(isCloth)) {
      const at = saidAt(context, laid);
      const fraction = valueOf(context.ask(layerFraction, laid.key));
      if (at === undefined || told.has(at) || fraction === undefined || 1 - fraction.byWeight >= lean - 1e-9) continue;
      told.add(at);
      const right = `resin ${asTyped(share(lean))} by weight`;
      context.report({
        at,
        message: text(
          'laid with {resin} of resin by weight, {pressure} on it, and a {verb} over perforated film: it bleeds dry; {least} of resin, or {pull} at the most',
          {
            resin: share(1 - fraction.byWeight),
            pressure: pascals(pressure),
            verb: takes.step.verb,
            least: share(lean),
            pull: pascals(hardPull),
          },
        ),
        related: [
          { at: { entry: context.recipe.entry, path: takes.step.path }, message: text('it takes the resin up') },
        ],
        fixes: [mendText(context, text('Lay it with {what}', { what: right }), at, TYPED_SHARES, right)],
      });
    }
  },
});
