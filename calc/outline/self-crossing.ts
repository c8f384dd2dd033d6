import { type Segment, segmentsOf } from './arc.ts';
import type { Contour } from './contour.ts';
import { meetings } from './meeting.ts';
import { boxesOf, headingsOf, turnsOf } from './segment-lists.ts';
import { perLeaf, type SegmentTree, treeOf } from './segment-tree.ts';
import type { Point } from './shape.ts';

/** Two segments, the lower number first, and a point where they meet though they should not. */
export interface Crossing {
  readonly segments: readonly [number, number];
  readonly at: Point;
}

/** What two neighbours may cross each other by where they should be tangent, m: drawings are rounded. */
const grazing = 1e-6;

/** A turn that is none, rad. */
const tangent = 1e-6;

/** A run whose headings differ by no more goes on in one direction all along, and meets itself nowhere, rad. */
const onwards = 2.5;

/** Where a tidied contour meets itself: the pair of segments with the lowest numbers. `near` (m): points nearer than that are one. */
export function firstCrossing(contour: Contour, near: number): Crossing | undefined {
  const n = contour.length;
  let first: Crossing | undefined;
  eachNearPair(contour, (i, j) => {
    if (first !== undefined && i * n + j >= first.segments[0] * n + first.segments[1]) return;
    const at = crossingOf(contour, i, j, near);
    if (at !== undefined) first = { segments: [i, j], at };
  });
  return first;
}

/** Where segments i < j meet, other than at the corner that they share. */
function crossingOf(contour: Contour, i: number, j: number, near: number): Point | undefined {
  const segments = segmentsOf(contour);
  const n = segments.length;
  const [s, other] = [segments[i]!, segments[j]!];
  const [follows, closes] = [j === i + 1, (j + 1) % n === i];
  if (!follows && !closes) return meetings(s, other, near / 1000)[0];
  if (s.arc === undefined && other.arc === undefined) return undefined;
  // a straight and an arc, or two arcs, that are tangent where they join meet nowhere else
  const smooth = follows && n > 2 && Math.abs(turnsOf(contour)[i]!) < tangent;
  if (smooth && Math.abs(s.bulge) < 1 && Math.abs(other.bulge) < 1) return undefined;
  const shared = [...(follows ? [s.to] : []), ...(closes ? [s.from] : [])];
  // a corner is met only at its own point
  const close = 10 * near + graze(s, other);
  return meetings(s, other, near).find((p) => shared.every((q) => Math.hypot(p.x - q.x, p.y - q.y) > close));
}

/** How far from their common point two neighbours may still touch, if they run as good as tangent there. */
function graze(a: Segment, b: Segment): number {
  const radius = Math.min(a.arc?.radius ?? Infinity, b.arc?.radius ?? Infinity);
  return Math.sqrt(8 * radius * grazing);
}

/**
 * Calls `found` with the pairs of segments (i < j) whose boxes meet, but for those of a run that goes on in one direction: a long
 * smooth line falls into a handful of such runs, and only where the boxes of two runs meet are their segments looked at.
 */
function eachNearPair(contour: Contour, found: (i: number, j: number) => void): void {
  const tree = treeOf(contour);
  const { boxes, leaves } = tree;
  const own = boxesOf(contour);
  const spans = headingSpans(contour, tree);
  const n = contour.length;
  const begin = (leaf: number) => (leaf - leaves + 1) * perLeaf;
  const pair = (i: number, j: number) => {
    if (overlap(own, 4 * i, 4 * j)) found(i, j);
  };
  const between = (a: number, b: number): void => {
    if (!overlap(boxes, 4 * a, 4 * b)) return;
    if (a < leaves - 1) {
      between(2 * a + 1, 2 * b + 1);
      between(2 * a + 1, 2 * b + 2);
      between(2 * a + 2, 2 * b + 1);
      between(2 * a + 2, 2 * b + 2);
      return;
    }
    for (let i = begin(a); i < Math.min(n, begin(a) + perLeaf); i++)
      for (let j = begin(b); j < Math.min(n, begin(b) + perLeaf); j++) pair(i, j);
  };
  const within = (node: number): void => {
    if (spans[node]! <= onwards) return;
    if (node < leaves - 1) {
      within(2 * node + 1);
      within(2 * node + 2);
      between(2 * node + 1, 2 * node + 2);
      return;
    }
    const end = Math.min(n, begin(node) + perLeaf);
    for (let i = begin(node); i < end; i++) for (let j = i + 1; j < end; j++) pair(i, j);
  };
  within(0);
}

const overlap = (boxes: Float64Array, a: number, b: number): boolean =>
  boxes[a]! <= boxes[b + 2]! &&
  boxes[b]! <= boxes[a + 2]! &&
  boxes[a + 1]! <= boxes[b + 3]! &&
  boxes[b + 1]! <= boxes[a + 3]!;

/** By how much the headings of the run under each node of the tree differ, rad; less than nothing where a node is empty. */
function headingSpans(contour: Contour, { leaves }: SegmentTree): Float64Array {
  const [headings, turns] = [headingsOf(contour), turnsOf(contour)];
  const least = new Float64Array(2 * leaves - 1).fill(Infinity);
  const most = new Float64Array(2 * leaves - 1).fill(-Infinity);
  // followed along the line, so that a run that winds about more than once has turned more than once
  let heading = 0;
  for (let i = 0; i < turns.length; i++) {
    const leaf = leaves - 1 + Math.floor(i / perLeaf);
    const end = heading + headings[2 * i + 1]! - headings[2 * i]!;
    least[leaf] = Math.min(least[leaf]!, heading, end);
    most[leaf] = Math.max(most[leaf]!, heading, end);
    heading = end + turns[i]!;
  }
  for (let node = leaves - 2; node >= 0; node--) {
    const [a, b] = [2 * node + 1, 2 * node + 2];
    least[node] = Math.min(least[a]!, least[b]!);
    most[node] = Math.max(most[a]!, most[b]!);
  }
  return most.map((high, node) => high - least[node]!);
}
