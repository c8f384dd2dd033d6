/** Whether two pieces of model data say the same; they are trees of plain values. */
export function sameData(left: unknown, right: unknown): boolean {
  if (Object.is(left, right)) return true;
  if (typeof left !== 'object' || typeof right !== 'object' || left === null || right === null) return false;
  if (Array.isArray(left) !== Array.isArray(right)) return false;
  return sameEntries(left, right);
}

/** Whether two materials differ in nothing but what they cost. */
export function sameButPrices(left: unknown, right: unknown): boolean {
  if (typeof left !== 'object' || typeof right !== 'object' || left === null || right === null) return left === right;
  return sameEntries(left, right, 'prices');
}

/** What is undefined is as good as absent. No list is made: a thousand recipes may ask after one edit of the materials. */
function sameEntries(left: object, right: object, except?: string): boolean {
  const mine = left as Readonly<Record<string, unknown>>;
  const others = right as Readonly<Record<string, unknown>>;
  let count = 0;
  for (const key in mine) {
    if (mine[key] === undefined || key === except) continue;
    if (!Object.hasOwn(others, key) || !sameData(mine[key], others[key])) return false;
    count++;
  }
  for (const key in others) if (others[key] !== undefined && key !== except) count--;
  return count === 0;
}
