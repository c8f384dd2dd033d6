import { text } from '../../../calc/figure/figure.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { firstOf, stepsOf, type WorkedStep } from '../kit/steps.ts';
import { usualBrake } from '../kit/written.ts';
import { rule } from '../rule.ts';

const MESH: Wanted = {
  step: 'mesh',
  kinds: ['infusion'],
  message: text('no flow mesh: the resin has to run through the cloth alone, a hundred times slower'),
  line: ({ bench }) => `mesh mesh_130, ${usualBrake(bench)} short of edge`,
};

/** It carries the resin itself. */
function scoredCore(steps: readonly WorkedStep[]): boolean {
  for (const { layers } of steps) for (const { layer } of layers) if (layer.score !== undefined) return true;
  return false;
}

export const meshMissing = rule({
  name: 'mesh/missing',
  severity: 'warning',
  title: 'an infusion without flow mesh',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    if (firstOf(steps, 'mesh') === undefined && !scoredCore(steps)) reportMissing(context, MESH);
  },
});
