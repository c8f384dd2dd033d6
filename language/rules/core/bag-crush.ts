import { text, type Usual } from '../../../calc/figure/index.ts';
import { drivingPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import type { Fix } from '../../lower/index.ts';
import { coresOf } from '../kit/cores.ts';
import { habitOf } from '../kit/habit.ts';
import { factValue, materialOf, valueOf } from '../kit/layers.ts';
import { mendText, TYPED_PRESSURE } from '../kit/mend-text.ts';
import { vacuumsOf } from '../kit/pressure.ts';
import { asTyped, pascals, share } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';

const MOST: Usual = {
  habit: 'core_pressed',
  what: 'share of its strength that a core is pressed with',
  value: share(0.33),
  source: 'common practice: a third',
};

export const coreBagCrush = rule({
  name: 'core/bag-crush',
  severity: 'error',
  title: 'the bag crushes the core',
  on: 'recipe',
  check(context) {
    if (context.recipe.process === undefined || context.recipe.process.kind === 'hand') return;
    const pressure = valueOf(context.ask(drivingPressure));
    const most = habitOf(context.bench, MOST);
    for (const core of coresOf(context)) {
      const strength = factValue(materialOf(context, core)?.compression);
      if (pressure === undefined || strength === undefined || pressure <= strength.si * most) continue;
      context.report({
        at: core.path,
        message: text(
          'the bag presses with {pressure}; {core} stands {strength} cold and {share} of that, {bears}, at the heat of the cure: less vacuum, or a stronger core',
          {
            pressure: pascals(pressure),
            core: core.name,
            strength: pascals(strength.si),
            share: share(most),
            bears: pascals(strength.si * most),
          },
        ),
        fixes: [lessVacuum(context, strength.si * most)],
      });
    }
  },
});

/** A single vacuum that is typed as a gauge reading is what the bag presses with. */
function lessVacuum(context: RecipeContext, bears: number): Fix | undefined {
  const [asked, other] = vacuumsOf(context);
  const right = asTyped(pascals(Math.floor(bears / 1000 + 1e-9) * 1000));
  return asked?.amount.basis !== 'gauge' || other !== undefined || bears < 1000
    ? undefined
    : mendText(context, text('Pull {what}', { what: right }), asked.worked.step.path, TYPED_PRESSURE, right);
}
