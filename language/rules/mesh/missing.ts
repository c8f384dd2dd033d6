import { text } from '../../../calc/figure/figure.ts';
import { reportMissing } from '../kit/missing-step.ts';
import { stepsOf } from '../kit/steps.ts';
import { usualBrake } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const meshMissing = rule({
  name: 'mesh/missing',
  severity: 'warning',
  title: 'an infusion without flow mesh',
  on: 'recipe',
  check(context) {
    // a scored or grooved core carries the resin itself
    const carries = stepsOf(context).some(({ layers }) => layers.some(({ layer }) => layer.score !== undefined));
    if (carries) return;
    reportMissing(context, {
      step: 'mesh',
      kinds: ['infusion'],
      message: text('no flow mesh: the resin has to run through the cloth alone, a hundred times slower'),
      line: `mesh mesh_130, ${usualBrake(context.bench)} short of edge`,
    });
  },
});
