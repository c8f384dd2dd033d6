import { text } from '../../calc/figure/figure.ts';
import { type DimensionName, namedDimension, type Quantity, siQuantity } from '../../calc/quantity/index.ts';
import type { Lowering } from './lowering.ts';
import type { Span } from './places.ts';

/**
 * What a workshop can mean, in SI: outside of it a unit or a digit has slipped. The bounds are wide on purpose
 * (from memory: lighter than a veil, heavier than lead, longer than any bench); they are no advice.
 */
const bounds: Partial<Record<DimensionName, readonly [least: number, most: number]>> = {
  length: [0, 10_000],
  area: [0, 100_000],
  mass: [0, 100_000],
  time: [0, 3.2e8],
  'areal weight': [0.001, 50],
  density: [1, 25_000],
  temperature: [70, 1500],
  'temperature difference': [0, 1000],
  ramp: [0, 10],
  pressure: [0, 5e12],
  viscosity: [1e-5, 1e5],
  permeability: [1e-18, 1e-4],
  angle: [-25.2, 25.2],
  ratio: [0, 10],
  'price per area': [0, 1e7],
  'price per length': [0, 1e7],
  'price per mass': [0, 1e7],
  'price per volume': [0, 1e10],
  'price per piece': [0, 1e9],
  money: [0, 1e9],
  wage: [0, 10],
  force: [0, 1e9],
  'thermal expansion': [-1e-3, 1e-2],
};

/** Values that mean nothing at zero: a roll without width, a cloth without weight. */
const neverZero: ReadonlySet<DimensionName> = new Set(['areal weight', 'density', 'viscosity', 'permeability']);

/** Gives the quantity back, or reports how far it is out and gives nothing. */
export function plausible(
  low: Lowering,
  quantity: Quantity,
  expected: DimensionName,
  where: Span | undefined,
): Quantity | undefined {
  const range = bounds[expected];
  if (range === undefined) return quantity;
  const [least, most] = range;
  if (quantity.si >= least && quantity.si <= most && !(quantity.si === 0 && neverZero.has(expected))) return quantity;
  const shown = (si: number): Quantity =>
    siQuantity(si, namedDimension(expected), { currency: quantity.currency, difference: quantity.difference });
  low.problem(
    'unit/suspicious',
    where,
    quantity.si < least
      ? text('{found} is less than anything of this kind can be (at least {least}): is the unit right?', {
          found: quantity,
          least: shown(least),
        })
      : text('{found} is more than anything of this kind can be (at most {most}): is the unit right?', {
          found: quantity,
          most: shown(most),
        }),
  );
  return undefined;
}

/** For a size that must not be zero, as the width of a roll. */
export function aboveZero(low: Lowering, quantity: Quantity | undefined, where: Span | undefined): boolean {
  if (quantity === undefined || quantity.si > 0) return true;
  low.problem('unit/suspicious', where, text('{found} cannot be: it must be above zero', { found: quantity }));
  return false;
}
