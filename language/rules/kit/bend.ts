import { edgeHeight } from '../../../calc/cloth/wrap.figure.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { factValue, materialOf, valueOf } from './layers.ts';
import { asTyped, metres } from './shown.ts';

/**
 * Smallest outside radius that a cloth goes round, m, by its weight up to, kg/m2. 3 mm with 200 g/m2 cloth: a builders' forum,
 * SEEN there; 6 mm for stitched cloth of 600 g/m2 (6 to 10 mm) and what lies between are from memory. The shop may set one
 * of its own: `habit radius 4 mm`.
 */
const radii: readonly (readonly [upTo: number, radius: number])[] = [
  [0.25, 0.003],
  [0.45, 0.0045],
  [Infinity, 0.006],
];

/** The smallest radius (m) for a ply; none where its cloth is not known. */
export function smallestRadius(context: RecipeContext, laid: LaidLayer): number | undefined {
  if (materialOf(context, laid) === undefined) return undefined;
  const own = factValue(context.book.shop?.habits?.radius)?.amounts[0];
  if (own !== undefined) return own.si;
  const weight = valueOf(context.ask(layerArealWeight, laid.key));
  return weight === undefined ? undefined : radii.find(([upTo]) => weight <= upTo)?.[1];
}

/** `edge round ...` as it is written for a ply: whole millimetres, or the full round of a low edge. None where no radius is both enough and possible. */
export function roundFor(context: RecipeContext, laid: LaidLayer, least: number): string | undefined {
  const height = valueOf(context.ask(edgeHeight, laid.key))?.height ?? Infinity;
  const whole = Math.ceil(least * 1000 - 1e-6) / 1000;
  const most = Math.floor(height * 1000 + 1e-6) / 2000;
  const radius = Math.min(whole, most);
  return radius < least - 1e-9 ? undefined : `edge round ${asTyped(metres(radius))}`;
}
