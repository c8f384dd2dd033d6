import { heatSpans, type SaidSpan } from '../../../calc/cure/spans.figure.ts';
import type { Figure } from '../../../calc/figure/figure.ts';
import { allKnown, ifKnown, isKnown, knownBy, type MaterialFacts } from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import type { RecipeContext } from '../rule.ts';
import { allOf, before, firstOf, stepsOf, type WorkedStep } from './steps.ts';

/** The spans of several steps in order, or what is missing in them. */
export function spansOf(context: RecipeContext, steps: readonly WorkedStep[]): Figure<readonly SaidSpan[]> {
  return ifKnown(allKnown(steps.map(({ step }) => context.ask(heatSpans, step.path))), (each, reasons) =>
    knownBy(each.flat(), reasons),
  );
}

/** The cures in the tool: `cure`, and a postcure before the part is taken out. */
export function curesOf(context: RecipeContext): {
  readonly steps: readonly WorkedStep[];
  readonly spans: Figure<readonly SaidSpan[]>;
} {
  const all = stepsOf(context);
  const out = firstOf(all, 'demould');
  const steps = allOf(out === undefined ? all : before(all, out), 'cure', 'postcure');
  return { steps, spans: spansOf(context, steps) };
}

/** The resins and prepregs that the layers of the stack are wetted with, each once, that of the process first. */
export function materialsThatCure(context: RecipeContext): readonly MaterialFacts[] {
  const names = new Set<string>();
  const own = context.recipe.process?.resin;
  if (own !== undefined) names.add(own);
  for (const { layers } of stepsOf(context)) {
    for (const { key, layer } of layers) {
      if (layer.kind === 'core' || layer.kind === 'insert') continue;
      const name = context.ask(layerResinName, key);
      if (isKnown(name)) names.add(name.value);
    }
  }
  return [...names].flatMap((name) => context.bench.material(name) ?? []);
}
