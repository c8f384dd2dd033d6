import { text } from '../../../calc/figure/index.ts';
import { hasWord, head } from '../../../calc/plan/reading.ts';
import { coresOf } from '../kit/cores.ts';
import { after, firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const coreOutgasRising = rule({
  name: 'core/outgas-rising',
  severity: 'warning',
  title: 'heat is put on a core before the resin has gelled',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    if (context.recipe.process?.kind === 'prepreg' || !steps.some(({ step }) => step.verb === 'heat')) return;
    const wet =
      context.recipe.process?.kind === 'infusion'
        ? firstOf(steps, 'infuse')
        : firstOf(
            steps.filter(({ layers }) => layers.some(({ layer }) => layer.kind === 'core')),
            'lay',
          );
    const cores = coresOf(context);
    const heat = after(steps, wet).find(({ step }) => step.verb === 'heat');
    const gelled = after(steps, wet).find(
      ({ step }) => step.verb === 'cure' || (step.verb === 'wait' && hasWord(head(step), 'gel', 'hard')),
    );
    if (wet === undefined || heat === undefined || cores[0] === undefined) return;
    if (gelled !== undefined && steps.indexOf(gelled) < steps.indexOf(heat)) return;
    context.report({
      at: heat.step.path,
      message: text(
        '{core} is heated while the resin is still wet: the gas in its cells expands and blows into the skin; heat it after gel',
        { core: cores[0].name },
      ),
      related: [{ at: { entry: context.recipe.entry, path: wet.step.path }, message: text('the resin goes in here') }],
      fixes: [context.edit.lineBefore('Let it gel first', heat.step.path, 'wait until gel')],
    });
  },
});
