import { text } from '../../figure/figure.ts';
import type { Contour } from '../../outline/contour.ts';
import { flattened } from '../../outline/flatten.ts';
import type { Point } from '../../outline/shape.ts';
import { type Box, boxRoundLine } from '../bounds.ts';
import type { DrawnItem, DrawnLine } from '../drawing.ts';
import { penOf, type Thing, type Writing } from './thing.ts';

/** A thing with the line that its name is led to. */
interface Tagged {
  readonly thing: Thing;
  readonly line: DrawnLine;
}

/** How tall a column of names may be, as a share of the length of what is drawn; and how many it holds at the least. */
const columnShare = 0.75;
const leastNames = 6;

/** Chords of curves that a leader may end on, m. */
const coarse = 1e-3;

/**
 * The names of lines that run round one another stand in a column to the right, each led to its line: beside the line itself they
 * would lie over each other. The outermost is named first.
 */
export function withLeaders(
  things: readonly Thing[],
  { low, high }: Box,
  writing: Writing,
  { apart = false }: { readonly apart?: boolean } = {},
): Thing[] {
  const tagged = things.flatMap((thing): Tagged[] => {
    const lines =
      thing.tag === undefined ? [] : thing.items.flatMap((item) => (item.kind === 'line' && item.closed ? [item] : []));
    const [line] = lines.sort((a, b) => longest(b.points) - longest(a.points));
    return line === undefined ? [] : [{ thing, line }];
  });
  const heightOf = apart ? middleOf : topOf;
  tagged.sort((a, b) => heightOf(b.line) - heightOf(a.line));
  // what runs along the same line shares a leader, unless each is to stand by itself
  const lines = apart
    ? tagged.map((each) => [each])
    : [...Map.groupBy(tagged, ({ thing, line }) => `${thing.layer} ${topOf(line).toFixed(6)}`).values()];
  const step = 1.8 * writing.height;
  const named = inRuns(lines, Math.max(leastNames, Math.floor((columnShare * (high.x - low.x)) / step)));
  const x = high.x + 2 * writing.height;
  const leaders = new Map<Thing, DrawnItem[]>();
  const middle = apart ? (low.y + high.y) / 2 : 0;
  let y = Math.min(apart ? Infinity : high.y, middle + ((named.length - 1) * step) / 2);
  for (const [first, ...others] of named) {
    if (first === undefined) continue;
    leaders.set(first.thing, leader(first, others.length, { x, y }, apart ? middleOf(first.line) : y, writing));
    y -= step;
  }
  return things.map((thing) => {
    const own = leaders.get(thing);
    return own === undefined ? thing : { ...thing, items: [...thing.items, ...own] };
  });
}

/**
 * No more than `most` names: those of one kind that follow each other share one, about as many each, which says how many more there are.
 * A column of sixty names is so much taller than the part that nothing is read where both are shown whole.
 */
function inRuns(lines: readonly Tagged[][], most: number): readonly Tagged[][] {
  if (lines.length <= most) return lines;
  const kinds: Tagged[][][] = [];
  for (const line of lines) {
    const last = kinds.at(-1);
    if (last?.[0]?.[0]?.thing.layer === line[0]?.thing.layer) last?.push(line);
    else kinds.push([line]);
  }
  // each kind has a name, and what is left is shared by how many there are; where there are more kinds than names, none is told apart
  if (kinds.length > most) return evenly(lines, most);
  const share = (most - kinds.length) / (lines.length - kinds.length);
  return kinds.flatMap((kind) => evenly(kind, 1 + Math.floor(share * (kind.length - 1) + 1e-9)));
}

const evenly = (lines: readonly Tagged[][], names: number): Tagged[][] =>
  Array.from({ length: names }, (_, i) => {
    const [from, to] = [i, i + 1].map((k) => Math.round((k * lines.length) / names));
    return lines.slice(from, to).flat();
  });

const topOf = ({ points }: DrawnLine): number => boxRoundLine(points).high.y;

function middleOf({ points }: DrawnLine): number {
  const { low, high } = boxRoundLine(points);
  return (low.y + high.y) / 2;
}

function longest(points: Contour): number {
  const { low, high } = boxRoundLine(points);
  return high.x - low.x;
}

function leader(
  { thing, line }: Tagged,
  others: number,
  at: Point,
  level: number,
  { height, say }: Writing,
): DrawnItem[] {
  const { layer, source, tag } = thing;
  const from = rightmostAt(line, level);
  if (from === undefined || tag === undefined) return [];
  const pen = penOf(layer, source);
  return [
    pen.line([from, at], { closed: false }),
    pen.circle(from, height / 6),
    pen.text(
      { x: at.x + height / 3, y: at.y - height / 2 },
      height,
      say(others === 0 ? tag : text('{tag}, and {others} more', { tag, others })),
    ),
  ];
}

/** Where the level line at `y` last leaves a shape; its nearest height where it does not meet it. */
function rightmostAt({ points }: DrawnLine, y: number): Point | undefined {
  const {
    low: { y: low },
    high: { y: high },
  } = boxRoundLine(points);
  const polygon = flattened(points, coarse);
  const level = Math.min(high - (high - low) * 1e-3, Math.max(low + (high - low) * 1e-3, y));
  let found: Point | undefined;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    if (a.y > level === b.y > level) return;
    const x = a.x + ((b.x - a.x) * (level - a.y)) / (b.y - a.y);
    if (found === undefined || x > found.x) found = { x, y: level };
  });
  return found;
}
