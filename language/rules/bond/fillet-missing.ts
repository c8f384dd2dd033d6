import { quantity, text, type Usual } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import type { Amount } from '../../../calc/model/index.ts';
import { filletRadius, firstClause, meetingAngle, subject } from '../../../calc/plan/reading.ts';
import { ANGLE } from '../../../calc/quantity/index.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { habitOf } from '../kit/habit.ts';
import { insideRadius } from '../kit/inside-radius.ts';
import { valueOf } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { arealWeight, asTyped, metres } from '../kit/shown.ts';
import { after, allOf, before, stepsOf, type WorkedStep } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Flatter than this the cloth follows the corner by itself. */
const FLAT: Usual = {
  habit: 'flat_corner',
  what: 'corner that cloth follows without a fillet',
  value: quantity(150 * 0.017453292519943295, ANGLE),
  source: 'from memory',
};

export const bondFilletMissing = rule({
  name: 'bond/fillet-missing',
  severity: 'warning',
  title: 'cloth goes over a bonded corner that has no fillet',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    for (const bond of allOf(steps, 'bond')) {
      const angle = meetingAngle(bond.step);
      if (angle === undefined || angle.si >= habitOf(context.bench, FLAT) - 1e-9) continue;
      const over = allOf(after(steps, bond), 'lay cloth')[0];
      if (over !== undefined) lookAt(context, steps, { bond, angle, over });
    }
  },
});

interface Corner {
  readonly bond: WorkedStep;
  readonly angle: Amount;
  /** the first cloth that is laid afterwards */
  readonly over: WorkedStep;
}

function lookAt(context: RecipeContext, steps: readonly WorkedStep[], { bond, angle, over }: Corner): void {
  const drawn = allOf(before(after(steps, bond), over), 'fillet').at(-1);
  const fillet = drawn ?? bond;
  const radius = filletRadius(fillet.step);
  // a fillet that says no radius is drawn by eye
  if (radius === undefined && drawn !== undefined) return;
  const cloths = over.layers.filter(isCloth).flatMap((laid) => {
    const weight = valueOf(context.ask(layerArealWeight, laid.key));
    return weight === undefined ? [] : [{ laid, weight }];
  });
  const heaviest = cloths.sort((a, b) => b.weight - a.weight)[0];
  const least = heaviest === undefined ? undefined : insideRadius(context, heaviest.weight);
  if (heaviest === undefined || least === undefined || (radius !== undefined && radius >= least - 1e-9)) return;
  const shown = {
    what: subject(bond.step) ?? '',
    angle,
    cloth: heaviest.laid.name,
    weight: arealWeight(heaviest.weight),
    least: metres(least),
  };
  const wanted = asTyped(metres(least));
  context.report({
    at: radius === undefined ? bond.step.path : (firstClause(fillet.step, 'fillet')?.path ?? fillet.step.path),
    message:
      radius === undefined
        ? text(
            '{what} meets the part at {angle}, and {cloth} ({weight}) goes over the corner: without a fillet of {least} it bridges',
            shown,
          )
        : text('a fillet of {radius} under {cloth} ({weight}): it goes into {least} or more', {
            ...shown,
            radius: metres(radius),
          }),
    related: [
      {
        at: { entry: context.recipe.entry, path: over.step.path },
        message: text('{cloth} goes over it here', shown),
      },
    ],
    fixes: [
      radius === undefined
        ? context.edit.addClause(text('Add a fillet of {what}', { what: wanted }), bond.step.path, `fillet ${wanted}`)
        : mendText(
            context,
            text('Make it {what}', { what: wanted }),
            firstClause(fillet.step, 'fillet')?.path ?? fillet.step.path,
            TYPED_LENGTH,
            wanted,
          ),
    ],
  });
}
