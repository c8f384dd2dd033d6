import { text } from '../../../calc/figure/index.ts';
import { hasWord, head } from '../../../calc/plan/reading.ts';
import { wrapsRound } from '../../../calc/stack/order.ts';
import { coresOf } from '../kit/cores.ts';
import { layersOf } from '../kit/layers.ts';
import { addStep } from '../kit/missing-step.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const coreUnsealedEdge = rule({
  name: 'core/unsealed-edge',
  severity: 'warning',
  title: 'a core lies open at the finished edge',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    const { process } = context.recipe;
    if (
      process === undefined ||
      stepsOf(context).length === 0 ||
      layers.some(({ layer }) => layer.kind === 'ply' && layer.extent.kind === 'wrap')
    )
      return;
    for (const core of coresOf(context)) {
      if (
        core.layer.extent.kind !== 'net' ||
        core.layer.inset !== undefined ||
        core.layer.sealed === true ||
        wrapsRound(layers, core).length > 0
      )
        continue;
      if (
        stepsOf(context).some(
          ({ step }) => step.verb === 'seal edge' || (step.verb === 'fill' && hasWord(head(step), 'edge')),
        )
      )
        continue;
      const line = `seal edge${process.resin === undefined ? '' : ` ${process.resin}`}`;
      context.report({
        at: core.path,
        message: text(
          '{core} reaches the finished edge and nothing closes it there: wrap a ply round it, end it inside, or seal the edge',
          { core: core.name },
        ),
        fixes: [addStep(context, 'seal edge', line)],
      });
    }
  },
});
