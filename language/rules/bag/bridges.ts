import { pleats } from '../../../calc/bag/bag.figure.ts';
import { pleatsNeeded } from '../../../calc/bag/pleats.ts';
import { text } from '../../../calc/figure/figure.ts';
import { stackHeight } from '../../../calc/laminate/height.figure.ts';
import { firstClause } from '../../../calc/plan/reading.ts';
import { valueOf } from '../kit/layers.ts';
import { mendText } from '../kit/mend-text.ts';
import { metres } from '../kit/shown.ts';
import { allOf, firstOf, stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** What the film lacks to come down the sides and up again, by the pleats that are typed; undefined where it reaches. */
export function filmBridges(context: RecipeContext) {
  const sides = context.recipe.part?.sides;
  const bag = allOf(stepsOf(context), 'bag')[0];
  if (sides === undefined || bag === undefined) return undefined;
  const folded = valueOf(context.ask(pleats));
  const height = valueOf(context.ask(stackHeight));
  if (folded === undefined || height === undefined || !(folded.height > 0)) return undefined;
  const wanted = pleatsNeeded(sides.height.si + height, folded.height);
  // an intensifier presses into the corner what the film does not reach
  const reaches = typeof wanted !== 'number' || folded.count >= wanted;
  return reaches || firstOf(stepsOf(context), 'intensifier') !== undefined
    ? undefined
    : { sides, bag, folded, height, wanted };
}

export const bagBridges = rule({
  name: 'bag/bridges',
  severity: 'error',
  title: 'the film is too short to reach the foot of the sides',
  on: 'recipe',
  check(context) {
    const bridged = filmBridges(context);
    if (bridged === undefined) return;
    const { sides, bag, folded, height, wanted } = bridged;
    const clause = firstClause(bag.step, 'pleats');
    const gives = (2 * folded.count * folded.height) / 2;
    const shown = {
      count: folded.count,
      pleat: metres(folded.height),
      sides: sides.height,
      wanted,
      gives: metres(gives / 2),
      needs: metres(2 * (sides.height.si + height)),
    };
    context.report({
      at: clause?.path ?? bag.step.path,
      message:
        folded.count === 1
          ? text(
              '1 pleat of {pleat} gives {gives} of film each way, down sides of {sides} and up again takes {needs}: the film bridges at their foot and the corner fills with resin; {wanted} pleats',
              shown,
            )
          : text(
              '{count} pleats of {pleat} give {gives} of film each way, down sides of {sides} and up again takes {needs}: the film bridges at their foot and the corner fills with resin; {wanted} pleats',
              shown,
            ),
      related: [
        {
          at: { entry: context.recipe.entry, path: `${context.recipe.part?.path}.sides` },
          message: text('sides of {sides} all round', shown),
        },
      ],
      fixes:
        clause === undefined
          ? []
          : [mendText(context, text('Fold {what} pleats', { what: wanted }), clause.path, /\d+/, String(wanted))],
    });
  },
});
