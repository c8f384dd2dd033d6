import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { linesOf } from '../kit/lines.ts';
import { sheetOf } from '../kit/sheets.ts';
import { metres } from '../kit/shown.ts';
import { usualBrake } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const meshOnVent = rule({
  name: 'mesh/on-vent',
  severity: 'error',
  title: 'the flow mesh reaches the vent',
  on: 'recipe',
  check(context) {
    const mesh = sheetOf(context, 'mesh');
    if (mesh === undefined || mesh.past <= 0) return;
    const vent = linesOf(context, 'vent').find(({ around, outside }) =>
      around !== undefined ? mesh.past >= around : outside.some((far) => far >= 0 && mesh.past >= far),
    );
    if (vent === undefined) return;
    const shown = {
      mesh: subject(mesh.step) ?? 'the mesh',
      reach: metres(mesh.past),
      vent: vent.name,
      at: metres(vent.around ?? Math.min(...vent.outside.filter((far) => far >= 0))),
    };
    context.report({
      at: mesh.clause?.path ?? mesh.step.path,
      message: text(
        '{mesh} runs {reach} past the edge and touches {vent}, {at} outside it: the resin goes straight into the trap',
        shown,
      ),
      related: [
        { at: { entry: context.recipe.entry, path: vent.worked.step.path }, message: text('{vent} lies here', shown) },
      ],
      fixes:
        mesh.clause === undefined
          ? []
          : [
              context.edit.replace(
                text('End the mesh {what} short of the edge', { what: usualBrake(context.bench) }),
                mesh.clause.path,
                `${usualBrake(context.bench)} short of edge`,
              ),
            ],
    });
  },
});
