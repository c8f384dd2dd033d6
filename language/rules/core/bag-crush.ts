import { text, type Usual } from '../../../calc/figure/index.ts';
import { drivingPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import { coresOf } from '../kit/cores.ts';
import { habitOf } from '../kit/habit.ts';
import { factValue, materialOf, valueOf } from '../kit/layers.ts';
import { pascals, share } from '../kit/shown.ts';
import { rule } from '../rule.ts';

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
          'the bag presses with {pressure}; {core} stands {strength}, {share} of it ({bears}) at the heat of the cure: less vacuum, or a stronger core',
          {
            pressure: pascals(pressure),
            core: core.name,
            strength: pascals(strength.si),
            share: share(most),
            bears: pascals(strength.si * most),
          },
        ),
      });
    }
  },
});
