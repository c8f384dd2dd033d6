import { onceFor } from '../kept.ts';
import { type Segment, segmentsOf } from './arc.ts';
import type { Contour } from './contour.ts';
import { boxesOf } from './segment-lists.ts';

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

export const treeOf = onceFor((contour: Contour): SegmentTree => grown(segmentsOf(contour), boxesOf(contour)));

function grown(segments: readonly Segment[], own: Float64Array): SegmentTree {
  let leaves = 1;
  while (leaves * perLeaf < segments.length) leaves *= 2;
  const nodes = 2 * leaves - 1;
  const boxes = new Float64Array(4 * nodes);
  for (let at = 0; at < boxes.length; at += 4) {
    boxes[at] = Infinity;
    boxes[at + 1] = Infinity;
    boxes[at + 2] = -Infinity;
    boxes[at + 3] = -Infinity;
  }
  for (let i = 0; i < segments.length; i++) widen(boxes, 4 * (leaves - 1 + Math.floor(i / perLeaf)), own, 4 * i);
  for (let at = 4 * (nodes - 1); at > 0; at -= 4) widen(boxes, 4 * ((at / 4 - 1) >> 1), boxes, at);
  return { segments, boxes, leaves };
}

/** Widens the box at one place by a box at another. */
function widen(boxes: Float64Array, mine: number, others: Float64Array, other: number): void {
  boxes[mine] = Math.min(boxes[mine]!, others[other]!);
  boxes[mine + 1] = Math.min(boxes[mine + 1]!, others[other + 1]!);
  boxes[mine + 2] = Math.max(boxes[mine + 2]!, others[other + 2]!);
  boxes[mine + 3] = Math.max(boxes[mine + 3]!, others[other + 3]!);
}
