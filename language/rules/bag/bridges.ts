import { pleats } from '../../../calc/bag/bag.figure.ts';
import { pleatsNeeded } from '../../../calc/bag/pleats.ts';
import { isKnown, text } from '../../../calc/figure/figure.ts';
import { stackHeight } from '../../../calc/laminate/height.figure.ts';
import { firstClause } from '../../../calc/plan/reading.ts';
import { mendText } from '../kit/mend-text.ts';
import { metres } from '../kit/shown.ts';
import { allOf, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const bagBridges = rule({
  name: 'bag/bridges',
  severity: 'error',
  title: 'the film is too short to reach the foot of the sides',
  on: 'recipe',
  check(context) {
    const sides = context.recipe.part?.sides;
    const bag = allOf(stepsOf(context), 'bag')[0];
    if (sides === undefined || bag === undefined) return;
    const folded = context.ask(pleats);
    const height = context.ask(stackHeight);
    if (!isKnown(folded) || !isKnown(height) || !(folded.value.height > 0)) return;
    const wanted = pleatsNeeded(sides.height.si + height.value, folded.value.height);
    // an intensifier presses into the corner what the film does not reach
    if (
      typeof wanted !== 'number' ||
      folded.value.count >= wanted ||
      firstOf(stepsOf(context), 'intensifier') !== undefined
    )
      return;
    const clause = firstClause(bag.step, 'pleats');
    const gives = (2 * folded.value.count * folded.value.height) / 2;
    const shown = {
      count: folded.value.count,
      pleat: metres(folded.value.height),
      sides: sides.height,
      wanted,
      gives: metres(gives / 2),
      needs: metres(2 * (sides.height.si + height.value)),
    };
    context.report({
      at: clause?.path ?? bag.step.path,
      message:
        folded.value.count === 1
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
