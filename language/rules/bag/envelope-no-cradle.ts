import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { firstClause } from '../../../calc/plan/reading.ts';
import { metres } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const STIFF: Usual = {
  habit: 'cradle',
  what: 'plate that stays flat in an envelope',
  value: metres(4e-3),
  source: 'common practice',
};

export const bagEnvelopeNoCradle = rule({
  name: 'bag/envelope-no-cradle',
  severity: 'warning',
  title: 'an envelope bag round a thin plate',
  on: 'recipe',
  check(context) {
    const { stack } = context.recipe;
    const bag = allOf(stepsOf(context), 'bag').find(({ step }) => firstClause(step, 'envelope') !== undefined);
    const plate = stack?.from === 'caul' && stack.tool !== undefined ? context.bench.material(stack.tool) : undefined;
    const thickness = plate?.thickness?.value;
    const stiff = usual(context.bench, STIFF);
    if (
      bag === undefined ||
      plate === undefined ||
      thickness === undefined ||
      thickness === UNKNOWN ||
      !isKnown(stiff) ||
      thickness.si >= stiff.value - 1e-9
    )
      return;
    const shown = { plate: plate.name, thickness, stiff: metres(stiff.value) };
    context.report({
      at: firstClause(bag.step, 'envelope')?.path ?? bag.step.path,
      message: text(
        'an envelope round {plate}, {thickness} thick: it bends with the bag, and bend and twist are cured in; lay it on a cradle, or take a plate of {stiff} and more',
        shown,
      ),
      related: [
        {
          at: { entry: context.recipe.entry, path: `${stack?.path}.tool` },
          message: text('the stack lies on {plate}', shown),
        },
      ],
    });
  },
});
