import { definePick, isKnown, known, missing, typed } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { namedLayers } from '../stack/order.ts';
import { allSteps } from './reading.ts';

/** Which steps lay which layers. */
export interface LayPlan {
  /** layer key -> the steps that lay it: a `lay` in a kit comes before the step that lays the kit */
  readonly stepsOf: ReadonlyMap<string, readonly Step[]>;
  /** step path -> what it lays, from the tool face */
  readonly layersOf: ReadonlyMap<string, readonly LaidLayer[]>;
}

/** Layers by the steps that lay them. A layer that no step names is in neither map. */
export const layPlan = definePick<LayPlan>('lay_plan', (bench) => {
  const stack = bench.ask(laidStack);
  const process = typed(bench.recipe.process, 'the process', inRecipe(bench, ''));
  if (!isKnown(stack) || !isKnown(process)) return missing(stack, process);
  const { steps } = process.value;
  const stepsOf = new Map<string, Step[]>();
  const layersOf = new Map<string, readonly LaidLayer[]>();
  let inKit: readonly LaidLayer[] = [];
  for (const step of allSteps(steps)) {
    const { lay } = step;
    if (step.verb === 'kit') inKit = [];
    if (lay === undefined) continue;
    const layers = lay.what === 'kit' ? inKit : laidBy(lay, stack.value.layers, stepsOf);
    layersOf.set(step.path, layers);
    for (const { key } of layers) {
      const before = stepsOf.get(key);
      if (before === undefined) stepsOf.set(key, [step]);
      else before.push(step);
    }
    if (isInKit(steps, step)) inKit = [...inKit, ...layers];
  }
  return known({ stepsOf, layersOf });
});

function isInKit(steps: readonly Step[], step: Step): boolean {
  return steps.some((kit) => kit.verb === 'kit' && kit.steps?.includes(step) === true);
}

function laidBy(
  lay: NonNullable<Step['lay']>,
  layers: readonly LaidLayer[],
  laid: ReadonlyMap<string, readonly Step[]>,
): readonly LaidLayer[] {
  if (lay.what === 'stack') return layers;
  if (lay.what === 'rest') return layers.filter(({ key }) => !laid.has(key));
  const first = lay.first === undefined ? [] : namedLayers(layers, lay.first);
  const last = lay.last === undefined ? first : namedLayers(layers, lay.last);
  const [from, to] = [first[0]?.index, last.at(-1)?.index];
  if (from === undefined || to === undefined) return first.length > 0 ? first : last;
  return lay.last === undefined ? first : layers.slice(Math.min(from, to), Math.max(from, to) + 1);
}
