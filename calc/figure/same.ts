/** Whether two pieces of model data say the same; they are trees of plain values. */
export function sameData(left: unknown, right: unknown): boolean {
  if (Object.is(left, right)) return true;
  if (typeof left !== 'object' || typeof right !== 'object' || left === null || right === null) return false;
  if (Array.isArray(left) !== Array.isArray(right)) return false;
  return sameEntries(left, right, () => true);
}

/** Whether two materials differ in nothing but what they cost. */
export function sameButPrices(left: unknown, right: unknown): boolean {
  if (typeof left !== 'object' || typeof right !== 'object' || left === null || right === null) return left === right;
  return sameEntries(left, right, (key) => key !== 'prices');
}

function sameEntries(left: object, right: object, counts: (key: string) => boolean): boolean {
  const mine = Object.entries(left).filter(([key, value]) => counts(key) && value !== undefined);
  const others = new Map(Object.entries(right).filter(([key, value]) => counts(key) && value !== undefined));
  return (
    mine.length === others.size && mine.every(([key, value]) => others.has(key) && sameData(value, others.get(key)))
  );
}
