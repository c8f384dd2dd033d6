import { text } from '../../../calc/figure/index.ts';
import type { Step } from '../../../calc/model/index.ts';
import { layPlan } from '../../../calc/plan/lay.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { Fix } from '../../lower/index.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** What is joined in a kit is laid by `lay kit`: that is once. */
const lays = (steps: readonly Step[]): readonly Step[] => steps.filter((step) => step.lay?.what !== 'kit');

/** `lay body to inner` where body lies already becomes `lay inner`; only where what is left is one run. */
function rest(
  context: RecipeContext,
  step: Step,
  layers: readonly LaidLayer[],
  twice: readonly LaidLayer[],
): Fix | undefined {
  const left = layers.filter((layer) => !twice.includes(layer));
  const [first, last] = [left[0], left.at(-1)];
  const from = context.edit.span(`${step.path}.first`);
  const to = context.edit.span(`${step.path}.last`) ?? from;
  if (first === undefined) return context.edit.removeLine('Take this step away', step.path);
  if (last === undefined || from === undefined || to === undefined || last.index - first.index !== left.length - 1)
    return undefined;
  const words = first === last ? first.name : `${first.name} to ${last.name}`;
  return {
    title: text('Write lay {what}', { what: words }),
    edits: [{ offset: from.offset, end: to.end, text: words }],
  };
}

export const plyLaidTwice = rule({
  name: 'ply/laid-twice',
  severity: 'error',
  title: 'a layer is laid by two steps',
  on: 'recipe',
  check(context) {
    const plan = valueOf(context.ask(layPlan));
    if (plan === undefined) return;
    const again = new Map<Step, { readonly layers: LaidLayer[]; readonly before: Step }>();
    for (const laid of layersOf(context)) {
      const [before, ...more] = lays(plan.stepsOf.get(laid.key) ?? []);
      for (const step of more) {
        const found = again.get(step);
        if (found !== undefined) found.layers.push(laid);
        else if (before !== undefined) again.set(step, { layers: [laid], before });
      }
    }
    for (const [step, { layers, before }] of again) {
      context.report({
        at: step.path,
        message: text('{layers} is laid here again: each layer is laid once', {
          layers: layers.map(({ name }) => name).join(', '),
        }),
        related: [{ at: { entry: context.recipe.entry, path: before.path }, message: text('laid here first') }],
        fixes: [rest(context, step, plan.layersOf.get(step.path) ?? [], layers)],
      });
    }
  },
});
