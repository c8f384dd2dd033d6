import { text } from '../../../calc/figure/index.ts';
import { drivingPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import { coresOf } from '../kit/cores.ts';
import { factValue, materialOf, valueOf } from '../kit/layers.ts';
import { pascals } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Share of its compressive strength that a core may be pressed with at the heat of the cure. Common practice: a third. */
const mostOfStrength = 1 / 3;

export const coreBagCrush = rule({
  name: 'core/bag-crush',
  severity: 'error',
  title: 'the bag crushes the core',
  on: 'recipe',
  check(context) {
    if (context.recipe.process === undefined || context.recipe.process.kind === 'hand') return;
    const pressure = valueOf(context.ask(drivingPressure));
    for (const core of coresOf(context)) {
      const strength = factValue(materialOf(context, core)?.compression);
      if (pressure === undefined || strength === undefined || pressure <= strength.si * mostOfStrength) continue;
      context.report({
        at: core.path,
        message: text(
          'the bag presses with {pressure}; {core} stands {strength}, a third of it ({third}) at the heat of the cure: less vacuum, or a stronger core',
          {
            pressure: pascals(pressure),
            core: core.name,
            strength: pascals(strength.si),
            third: pascals(strength.si * mostOfStrength),
          },
        ),
      });
    }
  },
});
