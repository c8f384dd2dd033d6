import { text } from '../../../calc/figure/index.ts';
import { layPlan } from '../../../calc/plan/lay.figure.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { laysUnknown } from '../kit/named-lays.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** `bed body`, `bond latch with paste`, `pour mix in bolts`: another step puts it where it belongs. */
function putElsewhere(context: RecipeContext): ReadonlySet<string> {
  const words = allSteps(context.recipe.process?.steps ?? [])
    .filter((step) => step.verb === 'bed' || step.verb === 'bond' || step.verb === 'bag down')
    .flatMap((step) => step.arguments.flatMap((argument) => (argument.kind === 'word' ? [argument.word] : [])));
  return new Set(words);
}

/** Layers that follow each other are told of together. */
function runsOf(layers: readonly LaidLayer[]): LaidLayer[][] {
  const runs: LaidLayer[][] = [];
  for (const laid of layers) {
    const last = runs.at(-1);
    if (last?.at(-1)?.index === laid.index - 1) last.push(laid);
    else runs.push([laid]);
  }
  return runs;
}

/** What is joined on the bench goes into the tool by a step of its own, before the next kit is begun. */
function reportKits(context: RecipeContext): void {
  const steps = context.recipe.process?.steps ?? [];
  steps.forEach((kit, at) => {
    if (kit.verb !== 'kit' || (kit.steps ?? []).length === 0) return;
    const goesOn = steps.slice(at + 1);
    // a process that ends here is only begun
    if (goesOn.length === 0) return;
    const next = goesOn.findIndex(({ verb }) => verb === 'kit');
    if ((next < 0 ? goesOn : goesOn.slice(0, next)).some(({ lay }) => lay?.what === 'kit')) return;
    const line = 'lay kit';
    context.report({
      at: kit.path,
      message: text('the kit is joined on the bench, and no step puts it into the tool'),
      fixes: [
        goesOn[0] === undefined
          ? undefined
          : context.edit.lineBefore(text('Add: {what}', { what: line }), goesOn[0].path, line),
      ],
    });
  });
}

export const plyNeverLaid = rule({
  name: 'ply/never-laid',
  severity: 'error',
  title: 'a layer of the stack is laid by no step',
  on: 'recipe',
  check(context) {
    const plan = valueOf(context.ask(layPlan));
    if (plan === undefined || plan.layersOf.size === 0) return;
    if (laysUnknown(context)) return;
    reportKits(context);
    const unlaid = layersOf(context).filter((laid) => !plan.stepsOf.has(laid.key));
    if (unlaid.length === 0) return;
    const elsewhere = putElsewhere(context);
    const never = unlaid.filter((laid) => !elsewhere.has(laid.layer.name));
    const lays = allSteps(context.recipe.process?.steps ?? []).filter((step) => plan.layersOf.has(step.path));
    for (const run of runsOf(never)) {
      const [first, last] = [run[0], run.at(-1)];
      if (first === undefined || last === undefined) continue;
      const words = first === last ? first.name : `${first.name} to ${last.name}`;
      const before =
        lays.findLast((step) => plan.layersOf.get(step.path)?.every((laid) => laid.index < first.index) === true) ??
        lays.at(-1);
      context.report({
        at: first.path,
        message:
          run.length === 1
            ? text('{layer} stands in the stack, but no step of the process lays it', { layer: first.name })
            : text('{layers} ({count} layers) stand in the stack, but no step of the process lays them', {
                layers: words,
                count: run.length,
              }),
        ...(before === undefined
          ? {}
          : {
              related: [
                {
                  at: { entry: context.recipe.entry, path: before.path },
                  message: text('the layers before it are laid here'),
                },
              ],
            }),
        fixes:
          before === undefined
            ? []
            : [context.edit.lineAfter(text('Add: lay {what}', { what: words }), before.path, `lay ${words}`)],
      });
    }
  },
});
