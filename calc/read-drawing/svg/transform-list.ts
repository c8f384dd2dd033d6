import { after, identity, type Matrix, moved, scaled, turned } from '../../outline/transform.ts';
import { numberList } from './number-list.ts';

const degrees = Math.PI / 180;

/** What each transformation makes of its numbers. Source: SVG 1.1 specification, section 7.6. */
const known: Readonly<Record<string, (n: readonly number[]) => Matrix | undefined>> = {
  matrix: ([a, b, c, d, e, f]) =>
    a === undefined || b === undefined || c === undefined || d === undefined || e === undefined || f === undefined
      ? undefined
      : { a, b, c, d, e, f },
  translate: ([x, y = 0]) => (x === undefined ? undefined : moved(x, y)),
  scale: ([x, y = x]) => (x === undefined || y === undefined ? undefined : scaled(x, y)),
  rotate: ([angle, x = 0, y = 0]) =>
    angle === undefined ? undefined : after(moved(x, y), after(turned(angle * degrees), moved(-x, -y))),
  skewX: ([angle]) => (angle === undefined ? undefined : { ...identity, c: Math.tan(angle * degrees) }),
  skewY: ([angle]) => (angle === undefined ? undefined : { ...identity, b: Math.tan(angle * degrees) }),
};

/** One transformation and what parts it from the next. */
const one = /^\s*,?\s*([a-zA-Z]+)\s*\(([^()]*)\)/;

/** The matrix of a list of transformations; undefined where the list cannot be read. */
export function readTransforms(list: string): Matrix | undefined {
  let matrix = identity;
  let rest = list.slice(0, 10_000);
  if (/^\s*none\s*$/.test(rest)) return matrix;
  while (rest.trim() !== '') {
    const found = one.exec(rest);
    if (found === null) return undefined;
    const numbers = numberList(found[2] ?? '');
    const next = numbers === undefined ? undefined : known[found[1] ?? '']?.(numbers);
    if (next === undefined) return undefined;
    matrix = after(matrix, next);
    rest = rest.slice(found[0].length);
  }
  return matrix;
}
