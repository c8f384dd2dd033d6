/**
 * A length or coordinate (in the unit of the file) as it stands in a file: at most `decimals` (1 or more), never an exponent,
 * never minus nought, the same on every machine. What is no number is refused: it would spoil a whole sheet of cloth.
 */
export function written(value: number, decimals = 6): string {
  if (!(Math.abs(value) < 1e9)) throw new RangeError(`${value} cannot be drawn`);
  const text = value.toFixed(decimals).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
