import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { linesOf } from '../kit/lines.ts';
import { sheetOf } from '../kit/sheets.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const ventOffPeel = rule({
  name: 'vent/off-peel',
  severity: 'warning',
  title: 'the peel ply does not reach the vent',
  on: 'recipe',
  check(context) {
    const peel = sheetOf(context, 'peel');
    // peel ply that ends short of the edge is reported for that
    if (peel === undefined || !peel.typed || peel.past < 0 || firstOf(stepsOf(context), 'breather') !== undefined)
      return;
    for (const vent of linesOf(context, 'vent')) {
      const far = vent.around ?? (vent.outside.length > 0 ? Math.min(...vent.outside) : undefined);
      if (far === undefined || far <= peel.past + 1e-9) continue;
      const right = asTyped(metres(far + 0.02));
      const shown = {
        vent: vent.name,
        far: metres(far),
        peel: subject(peel.step) ?? 'the peel ply',
        past: metres(peel.past),
      };
      context.report({
        at: vent.worked.step.path,
        message: text(
          '{vent} lies {far} outside the part, {peel} ends {past} outside it: under the film in between nothing leads the air',
          shown,
        ),
        related: [
          { at: { entry: context.recipe.entry, path: peel.step.path }, message: text('{peel} ends before it', shown) },
        ],
        fixes:
          peel.clause === undefined
            ? []
            : [
                context.edit.replace(
                  text('Let the peel ply run {what} past the edge', { what: right }),
                  peel.clause.path,
                  `${right} past edge`,
                ),
              ],
      });
    }
  },
});
