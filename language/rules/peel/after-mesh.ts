import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const peelAfterMesh = rule({
  name: 'peel/after-mesh',
  severity: 'error',
  title: 'the peel ply lies above the flow mesh',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const peel = firstOf(steps, 'peel');
    const mesh = firstOf(steps, 'mesh');
    if (peel === undefined || mesh === undefined || steps.indexOf(peel) < steps.indexOf(mesh)) return;
    const named = { peel: subject(peel.step) ?? 'the peel ply', mesh: subject(mesh.step) ?? 'the mesh' };
    context.report({
      at: peel.step.path,
      message: text('{peel} goes over {mesh}: the mesh touches the laminate and is cured to it', named),
      related: [
        {
          at: { entry: context.recipe.entry, path: mesh.step.path },
          message: text('{mesh} is laid on the stack here', named),
        },
      ],
      fixes: [context.edit.moveBefore('Peel ply under the mesh', peel.step.path, mesh.step.path)],
    });
  },
});
