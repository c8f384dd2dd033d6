import { type Segment, segmentBox, segmentsOf } from './arc.ts';
import type { Contour } from './contour.ts';

/**
 * Segments in walking order under a tree of boxes: each node covers a run of the line. Far runs are passed by, so that a point is
 * placed against 2,000 segments by looking at some dozens.
 */
export interface SegmentTree {
  readonly segments: readonly Segment[];
  /** left, low, right, high of each node; node i has the children 2i + 1 and 2i + 2 */
  readonly boxes: Float64Array;
  readonly leaves: number;
}

export const perLeaf = 4;
const trees = new WeakMap<Contour, SegmentTree>();

export function treeOf(contour: Contour): SegmentTree {
  let tree = trees.get(contour);
  if (tree === undefined) {
    tree = grown(segmentsOf(contour));
    trees.set(contour, tree);
  }
  return tree;
}

function grown(segments: readonly Segment[]): SegmentTree {
  let leaves = 1;
  while (leaves * perLeaf < segments.length) leaves *= 2;
  const boxes = new Float64Array(4 * (2 * leaves - 1));
  for (let i = 0; i < boxes.length; i += 4) boxes.set([Infinity, Infinity, -Infinity, -Infinity], i);
  const widen = (node: number, box: ArrayLike<number>, at = 0) => {
    for (let k = 0; k < 4; k++) {
      const [mine, other] = [boxes[4 * node + k]!, box[at + k]!];
      boxes[4 * node + k] = k < 2 ? Math.min(mine, other) : Math.max(mine, other);
    }
  };
  segments.forEach((s, i) => {
    widen(leaves - 1 + Math.floor(i / perLeaf), segmentBox(s));
  });
  for (let node = leaves - 2; node >= 0; node--) {
    widen(node, boxes, 4 * (2 * node + 1));
    widen(node, boxes, 4 * (2 * node + 2));
  }
  return { segments, boxes, leaves };
}

/** Calls `found` with every segment whose box meets the box given (left, low, right, high), until it says true. */
export function eachMeeting(
  { boxes, leaves, segments }: SegmentTree,
  [left, low, right, high]: readonly [number, number, number, number],
  found: (segment: number) => boolean,
): boolean {
  const visit = (node: number): boolean => {
    const at = 4 * node;
    if (boxes[at]! > right || boxes[at + 1]! > high || boxes[at + 2]! < left || boxes[at + 3]! < low) return false;
    if (node < leaves - 1) return visit(2 * node + 1) || visit(2 * node + 2);
    const start = (node - leaves + 1) * perLeaf;
    for (let i = start; i < Math.min(segments.length, start + perLeaf); i++) if (found(i)) return true;
    return false;
  };
  return visit(0);
}
