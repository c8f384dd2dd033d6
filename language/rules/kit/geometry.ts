import type { Bench } from '../../../calc/figure/index.ts';
import { isImpossible, type Outcome } from '../../../calc/outcome.ts';
import { type PartFrame, partFrame } from '../../../calc/outline/part.figure.ts';
import { type StandsOut, shapesOverlap, standsOut } from '../../../calc/outline/placed.ts';
import { origin, type Placed } from '../../../calc/outline/shape.ts';
import { type Footprint, layerFootprint } from '../../../calc/stack/footprint.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { valueOf } from './layers.ts';

/*
 * How shapes lie to each other is found by walking round them, and asked by many rules on every key: the answer is kept with the
 * two shapes, which are the same objects as long as the figures behind them hold.
 */
function keptFor<T>(
  find: (inner: Placed, outer: Placed) => Outcome<T>,
): (inner: Placed | undefined, outer: Placed | undefined) => T | undefined {
  const kept = new WeakMap<Placed, WeakMap<Placed, Outcome<T>>>();
  return (inner, outer) => {
    if (inner === undefined || outer === undefined) return undefined;
    const before = kept.get(inner) ?? new WeakMap<Placed, Outcome<T>>();
    kept.set(inner, before);
    const found = before.get(outer) ?? find(inner, outer);
    before.set(outer, found);
    return isImpossible(found) ? undefined : found;
  };
}

/** How far one shape stands out of another, at the worst place; below zero it clears it. */
export const outOf: (inner: Placed | undefined, outer: Placed | undefined) => StandsOut | undefined =
  keptFor(standsOut);

/** Whether two shapes share more than an edge. */
export const overlapping: (a: Placed | undefined, b: Placed | undefined) => boolean | undefined =
  keptFor(shapesOverlap);

const outlines = new WeakMap<PartFrame, Placed>();

/** The outline of the part, about its middle. */
export function partPlaced(bench: Bench): Placed | undefined {
  const frame = valueOf(bench.ask(partFrame));
  if (frame === undefined) return undefined;
  const placed = outlines.get(frame) ?? { shape: frame.shape, centre: origin };
  outlines.set(frame, placed);
  return placed;
}

export const footprintOf = (bench: Bench, laid: LaidLayer): Footprint | undefined =>
  valueOf(bench.ask(layerFootprint, laid.key));

/** How far a layer with a place of its own stands out of the part, m; none for layers that cover all of it. */
export function outOfPart(bench: Bench, laid: LaidLayer): number | undefined {
  const footprint = footprintOf(bench, laid);
  if (footprint === undefined || footprint.whole) return undefined;
  return outOf(footprint.placed, partPlaced(bench))?.by;
}

/** What a line may be off before it is told: a tenth of a millimetre, m. */
export const SLACK = 1e-4;
