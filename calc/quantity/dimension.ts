import type { Dimension } from './types.ts';

const BASES = ['length', 'mass', 'time', 'temperature', 'angle', 'money'] as const;

/** A dimension from its exponents that are not zero: `dimension({ mass: 1, length: -2 })`. */
export function dimension(exponents: Partial<Dimension>): Dimension {
  return { length: 0, mass: 0, time: 0, temperature: 0, angle: 0, money: 0, ...exponents };
}

export const NUMBER = dimension({});
export const LENGTH = dimension({ length: 1 });
export const AREA = dimension({ length: 2 });
export const VOLUME = dimension({ length: 3 });
export const MASS = dimension({ mass: 1 });
export const TIME = dimension({ time: 1 });
export const TEMPERATURE = dimension({ temperature: 1 });
export const ANGLE = dimension({ angle: 1 });
export const MONEY = dimension({ money: 1 });
export const FORCE = dimension({ mass: 1, length: 1, time: -2 });
export const PRESSURE = dimension({ mass: 1, length: -1, time: -2 });
export const ENERGY = dimension({ mass: 1, length: 2, time: -2 });
export const POWER = dimension({ mass: 1, length: 2, time: -3 });
export const VISCOSITY = dimension({ mass: 1, length: -1, time: -1 });
export const AREAL_WEIGHT = dimension({ mass: 1, length: -2 });
export const DENSITY = dimension({ mass: 1, length: -3 });

export function sameDimension(left: Dimension, right: Dimension): boolean {
  // asked many thousand times: most dimensions are one of the constants above
  if (left === right) return true;
  return (
    left.length === right.length &&
    left.mass === right.mass &&
    left.time === right.time &&
    left.temperature === right.temperature &&
    left.angle === right.angle &&
    left.money === right.money
  );
}

/** left * right^power */
export function timesPower(left: Dimension, right: Dimension, power: number): Dimension {
  const result: Record<string, number> = {};
  // "+ 0" turns -0 into 0, so that equal dimensions are equal in every comparison
  for (const base of BASES) result[base] = left[base] + right[base] * power + 0;
  return dimension(result);
}

/** A key for maps: equal exactly for equal dimensions. */
export function dimensionKey(of: Dimension): string {
  return `${of.length},${of.mass},${of.time},${of.temperature},${of.angle},${of.money}`;
}
