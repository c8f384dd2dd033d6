import { text } from '../../../calc/figure/figure.ts';
import { allOf, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const tapeLate = rule({
  name: 'tape/late',
  severity: 'warning',
  title: 'cloth is laid before the sealant tape is on the flange',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const tape = firstOf(steps, 'tape');
    // a skin coat that is laid wet and cures before the dry stack sheds nothing when the tape comes
    const cloth = allOf(steps, 'lay cloth').find(
      ({ step }) => !(context.recipe.process?.kind === 'infusion' && step.lay?.resin !== undefined),
    );
    if (tape === undefined || cloth === undefined || steps.indexOf(tape) < steps.indexOf(cloth)) return;
    const layer = cloth.layers.find(({ layer: { kind } }) => kind !== 'coat')?.name ?? 'the cloth';
    context.report({
      at: tape.step.path,
      message: text('the tape goes on after {layer}: fibres that lie under it are air channels', { layer }),
      related: [
        {
          at: { entry: context.recipe.entry, path: cloth.step.path },
          message: text('{layer} is laid here, over the bare flange', { layer }),
        },
      ],
      fixes: [context.edit.moveBefore('Tape before the first cloth', tape.step.path, cloth.step.path)],
    });
  },
});
