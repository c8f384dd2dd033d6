import type { Point } from '../outline/shape.ts';
import { numberPattern } from './number-pattern.ts';

/** A command with whole coordinates, its shorthands written out: `M L C Q A Z` and its numbers in the order of SVG. */
export type PathCommand = readonly [letter: string, ...numbers: number[]];

/** Where path data cannot be read, in characters from 0. */
export interface PathFault {
  readonly at: number;
  /** a letter that is no command */
  readonly unknown?: string;
}

/** The numbers that each command takes; two make a point but for `h`, `v` and `a`. Source: SVG 1.1 specification, section 8.3. */
const numbersOf: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7, z: 0 };

const space = /[\s,]*/y;
const number = new RegExp(numberPattern, 'y');
/** The two flags of an arc are one character each: `a25 25 0 0150 0`. */
const flag = /[01]/y;

/**
 * Reads path data from front to back, once, whatever its length; `take` gets each command with the place of the pen before it and
 * may end the reading by `false`.
 */
export function readCommands(data: string, take: (command: PathCommand, pen: Point) => boolean): PathFault | undefined {
  let at = 0;
  const skip = (what: RegExp): string => {
    what.lastIndex = at;
    const found = what.exec(data)?.[0] ?? '';
    at += found.length;
    return found;
  };
  let pen: Point = { x: 0, y: 0 };
  let start = pen;
  /** the last control point, and of which kind of curve */
  let control: { readonly of: 'C' | 'Q'; readonly point: Point } | undefined;

  for (skip(space); at < data.length; skip(space)) {
    const letter = data[at]!;
    let kind = letter.toLowerCase();
    const many = numbersOf[kind];
    if (many === undefined) return /[a-zA-Z]/.test(letter) ? { at, unknown: letter } : { at };
    at++;
    do {
      const read: number[] = [];
      for (let i = 0; i < many; i++) {
        skip(space);
        const word = skip(kind === 'a' && (i === 3 || i === 4) ? flag : number);
        if (word === '') return { at };
        read.push(Number(word));
      }
      const from = letter >= 'a' ? pen : { x: 0, y: 0 };
      const next = (i: number): Point => ({ x: from.x + (read[i] ?? 0), y: from.y + (read[i + 1] ?? 0) });
      const mirrored = (of: 'C' | 'Q'): Point =>
        control?.of === of ? { x: 2 * pen.x - control.point.x, y: 2 * pen.y - control.point.y } : pen;
      const [command, to, bend] = whole(kind, read, { pen, start, from, next, mirrored });
      if (!take(command, pen)) return undefined;
      if (kind === 'm') start = to;
      pen = to;
      control = bend === undefined ? undefined : { of: command[0] === 'C' ? 'C' : 'Q', point: bend };
      // points that follow the first of a move are straights
      if (kind === 'm') kind = 'l';
      skip(space);
    } while (many > 0 && /[\d.+-]/.test(data[at] ?? ''));
  }
  return undefined;
}

interface Pen {
  readonly pen: Point;
  readonly start: Point;
  /** what the numbers count from */
  readonly from: Point;
  readonly next: (i: number) => Point;
  readonly mirrored: (of: 'C' | 'Q') => Point;
}

/** A command with whole coordinates, where it ends, and its last control point. */
function whole(kind: string, read: readonly number[], p: Pen): readonly [PathCommand, Point, Point?] {
  const { next } = p;
  const straight = (letter: 'M' | 'L', to: Point) => [[letter, to.x, to.y], to] as const;
  switch (kind) {
    case 'm':
      return straight('M', next(0));
    case 'h':
      return straight('L', { x: p.from.x + (read[0] ?? 0), y: p.pen.y });
    case 'v':
      return straight('L', { x: p.pen.x, y: p.from.y + (read[0] ?? 0) });
    case 'c':
      return cubic(next(0), next(2), next(4));
    case 's':
      return cubic(p.mirrored('C'), next(0), next(2));
    case 'q':
      return quadratic(next(0), next(2));
    case 't':
      return quadratic(p.mirrored('Q'), next(0));
    case 'a': {
      const to = next(5);
      return [['A', ...read.slice(0, 5), to.x, to.y], to];
    }
    case 'z':
      return [['Z'], p.start];
    default:
      return straight('L', next(0));
  }
}

const cubic = (a: Point, b: Point, to: Point) => [['C', a.x, a.y, b.x, b.y, to.x, to.y], to, b] as const;
const quadratic = (a: Point, to: Point) => [['Q', a.x, a.y, to.x, to.y], to, a] as const;
