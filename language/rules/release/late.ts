import { text } from '../../../calc/figure/figure.ts';
import { firstLater } from '../kit/missing-step.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const releaseLate = rule({
  name: 'release/late',
  severity: 'error',
  title: 'layers are laid before the tool is released',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const release = firstOf(steps, 'release');
    const laid = firstOf(steps, 'lay');
    if (release === undefined || laid === undefined || steps.indexOf(release) < steps.indexOf(laid)) return;
    const layer = laid.layers[0]?.name ?? laid.step.lay?.first ?? 'the stack';
    context.report({
      at: release.step.path,
      message: text('the tool is released after {layer} is laid on it: release first', { layer }),
      related: [
        {
          at: { entry: context.recipe.entry, path: laid.step.path },
          message: text('{layer} goes onto the bare tool here', { layer }),
        },
      ],
      fixes: [
        context.edit.moveBefore(
          'Release before the first layer',
          release.step.path,
          firstLater(context, 'release')?.step.path ?? laid.step.path,
        ),
      ],
    });
  },
});
