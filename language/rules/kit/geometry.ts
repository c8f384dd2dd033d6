import { partFrame } from '../../../calc/outline/part.figure.ts';
import { formBounds } from '../../../calc/outline/measure.ts';
import { type StandsOut, standsOut } from '../../../calc/outline/placed.ts';
import { plainForm } from '../../../calc/outline/plain.ts';
import { type Placed, origin } from '../../../calc/outline/shape.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { type Footprint, layerFootprint } from '../../../calc/stack/footprint.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { valueOf } from './layers.ts';

/** The outline of the part, about its middle. */
export function partPlaced(bench: Bench): Placed | undefined {
  const frame = valueOf(bench.ask(partFrame));
  return frame === undefined ? undefined : { shape: frame.shape, centre: origin };
}

export const footprintOf = (bench: Bench, laid: LaidLayer): Footprint | undefined => valueOf(bench.ask(layerFootprint, laid.key));

/** How far one shape stands out of another, at the worst place; below zero it clears it. */
export function outOf(inner: Placed | undefined, outer: Placed | undefined): StandsOut | undefined {
  if (inner === undefined || outer === undefined) return undefined;
  const found = standsOut(inner, outer);
  return isImpossible(found) ? undefined : found;
}

/** How far a layer with a place of its own stands out of the part, m; none for layers that cover all of it. */
export function outOfPart(bench: Bench, laid: LaidLayer): number | undefined {
  const footprint = footprintOf(bench, laid);
  if (footprint === undefined || footprint.whole) return undefined;
  return outOf(footprint.placed, partPlaced(bench))?.by;
}

/** Half the least width of an outline, as far as that can be told without a mesh: a disc of this radius fits in. */
export function halfWidth(placed: Placed | undefined): number | undefined {
  const form = placed === undefined ? undefined : plainForm(placed.shape);
  if (form === undefined || isImpossible(form) || form.kind === 'polygon') return undefined;
  const { length, width } = formBounds(form);
  return Math.min(length, width) / 2;
}

/** What a line may be off before it is told: a tenth of a millimetre, m. */
export const SLACK = 1e-4;
