import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { sheetOf } from '../kit/sheets.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const meshBeyondPeel = rule({
  name: 'mesh/beyond-peel',
  severity: 'error',
  title: 'the flow mesh reaches past the peel ply',
  on: 'recipe',
  check(context) {
    const peel = sheetOf(context, 'peel');
    // past the edge of the part there is no laminate, and mesh/reaches-edge says what is wrong there
    if (peel === undefined || peel.past >= 0) return;
    const mesh = sheetOf(context, 'mesh');
    if (mesh === undefined || mesh.past <= peel.past + 1e-9) return;
    const shown = {
      mesh: subject(mesh.step) ?? 'the mesh',
      peel: subject(peel.step) ?? 'the peel ply',
      bare: metres(mesh.past - peel.past),
    };
    context.report({
      at: peel.clause?.path ?? peel.step.path,
      message: text('{mesh} reaches {bare} past {peel}: there it lies on the laminate and is cured to it', shown),
      related: [
        { at: { entry: context.recipe.entry, path: mesh.step.path }, message: text('{mesh} is laid here', shown) },
      ],
      fixes:
        peel.clause === undefined
          ? []
          : [context.edit.replace('Let the peel ply run 60 mm past the edge', peel.clause.path, '60 mm past edge')],
    });
  },
});
