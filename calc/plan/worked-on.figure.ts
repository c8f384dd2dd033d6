import { layerArea } from '../cloth/area.figure.ts';
import { allKnown, type Bench, type Figure, ifKnown, isKnown, known, knownBy, text, worked } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { shapePerimeter } from '../outline/measure.ts';
import { inRecipe, outlinePerimeter, partFrame, zonePlaced } from '../outline/part.figure.ts';
import { LENGTH } from '../quantity/index.ts';
import { footprintPerimeter, layerFootprint } from '../stack/footprint.figure.ts';
import { laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { namedLayers } from '../stack/order.ts';
import { allSaid, amountOf, clauseWith, countOf, flat, hasWord, head, namedBehind } from './reading.ts';

/*
 * What a step works on that names layers, a length or a place: `score body`, `cut outer to inner`,
 * `fillet 10 mm with epoxy_fillet, 410 mm long`.
 */

const sum = (each: readonly number[]): number => each.reduce((all, one) => all + one, 0);

/** The layers that a step names: one, or a run of them. None where it names none. */
export function layersNamed(bench: Bench, step: Step): readonly LaidLayer[] {
  const word = step.arguments[0];
  const stack = bench.ask(laidStack);
  if (word?.kind !== 'word' || !isKnown(stack)) return [];
  const { layers } = stack.value;
  const first = namedLayers(layers, word.word);
  const to = namedBehind(step, 'to');
  const last = to === undefined ? [] : namedLayers(layers, to);
  const [from, end] = [first[0]?.index, last.at(-1)?.index];
  return from === undefined || end === undefined ? first : layers.slice(Math.min(from, end), Math.max(from, end) + 1);
}

/** Area of the layers that a step names, m2; nothing where it names none. */
export const namedArea = (bench: Bench, step: Step): Figure<number> | undefined => {
  const layers = layersNamed(bench, step);
  return layers.length === 0 ? undefined : areaOfAll(bench, layers);
};

/** Area of some layers together, m2. */
export const areaOfAll = (bench: Bench, layers: readonly LaidLayer[]): Figure<number> =>
  ifKnown(allKnown(layers.map(({ key }) => bench.ask(layerArea, key))), (areas, reasons) =>
    knownBy(sum(areas), reasons),
  );

/** The holes that the recipe drills, line by line: how many, and how wide, m. */
export const holesDrilled = (bench: Bench): readonly { readonly count: number; readonly width: number }[] =>
  (bench.recipe.process?.steps ?? [])
    .filter(({ verb }) => verb === 'drill')
    .map((step) => ({ count: countOf(head(step)) ?? 1, width: amountOf(head(step), LENGTH)?.si ?? 0 }));

/** The way round the layers that a step names, m. */
export const namedEdge = (bench: Bench, step: Step): Figure<number> | undefined => {
  const layers = layersNamed(bench, step);
  return layers.length === 0 ? undefined : roundAll(bench, layers);
};

const roundAll = (bench: Bench, layers: readonly LaidLayer[]): Figure<number> =>
  ifKnown(
    allKnown(
      layers.map(({ key, name }) =>
        ifKnown(bench.ask(layerFootprint, key), (footprint) =>
          worked(footprintPerimeter(footprint), text('the way round {name}', { name })),
        ),
      ),
    ),
    (ways, reasons) => knownBy(sum(ways), reasons),
  );

/**
 * How long the line is that a step works along, m: `410 mm long`, `perimeter`, `along mount` round a zone or a layer, along an
 * end of the part. Nothing where the step does not say.
 */
export function workedLength(bench: Bench, step: Step): Figure<number> | undefined {
  const long = clauseWith(step, 'long');
  const typed = long === undefined ? undefined : amountOf(flat(long), LENGTH);
  if (typed !== undefined) return known(typed.si);
  if (clauseWith(step, 'perimeter') !== undefined) return bench.ask(outlinePerimeter);
  const along = clauseWith(step, 'along');
  const name =
    along === undefined ? undefined : flat(along).find((each) => each.kind === 'word' && each.word !== 'along');
  return name?.kind === 'word' ? alongNamed(bench, name.word) : undefined;
}

/** Along an end of the part, or round a zone or a layer. */
export function alongNamed(bench: Bench, name: string): Figure<number> | undefined {
  const { part } = bench.recipe;
  if (part?.ends?.from === name || part?.ends?.to === name)
    return ifKnown(bench.ask(partFrame), ({ bounds }, reasons) => knownBy(bounds.width, reasons));
  if (part?.zones.some((zone) => zone.name === name) === true)
    return ifKnown(bench.ask(zonePlaced, name), ({ shape }) =>
      worked(shapePerimeter(shape), text('the way round {name}', { name }), { at: inRecipe(bench, part.path) }),
    );
  const stack = bench.ask(laidStack);
  const layers = isKnown(stack) ? namedLayers(stack.value.layers, name) : [];
  return layers.length === 0 ? undefined : roundAll(bench, layers);
}

/** Whether a step says that both sides are done: `fillet 12 mm both sides`. */
export const bothSides = (step: Step): boolean => hasWord(allSaid(step), 'both');
