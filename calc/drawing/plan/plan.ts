import { text } from '../../figure/figure.ts';
import { type Bench, type Figure, ifKnown, knownBy } from '../../figure/index.ts';
import { partFrame } from '../../outline/part.figure.ts';
import { boundsOf } from '../bounds.ts';
import type { DrawingLayer } from '../drawing.ts';
import { dimensionThings } from './dimension-lines.ts';
import { flowThings } from './flow-lines.ts';
import { keyThings } from './key.ts';
import { layerThings } from './layer-lines.ts';
import { withLeaders } from './leaders.ts';
import { partThings } from './part-lines.ts';
import { processThings } from './process-lines.ts';
import type { DrawnThings, Say, Thing, Writing } from './thing.ts';
import { toolThings } from './tool-lines.ts';

export interface PlanOptions {
  /** layers of the drawing that are left out */
  readonly without?: ReadonlySet<DrawingLayer>;
  /** with the layers of the stack by their hatches below it: for a drawing that has no list beside it */
  readonly key?: boolean;
  /** capitals as a share of the larger side of the part; larger for what is looked at in a narrow place */
  readonly letters?: number;
}

/** Capitals of what is printed. */
const printed = 0.022;

/**
 * The part seen from the bag side with everything that lies on it, under it and round it, where it lies. What cannot be
 * worked out is left out of the drawing and says so in its row.
 */
export function planOf(
  bench: Bench,
  say: Say,
  { without, key = false, letters = printed }: PlanOptions = {},
): Figure<DrawnThings> {
  return ifKnown(bench.ask(partFrame), (frame, reasons) => {
    const writing: Writing = { say, height: letters * Math.max(frame.bounds.length, frame.bounds.width) };
    const shown = ({ layer }: Thing): boolean => without?.has(layer) !== true;
    const lying = [
      ...toolThings(bench, frame),
      ...processThings(bench, frame),
      ...partThings(bench, frame, writing),
      ...layerThings(bench, writing),
      ...flowThings(bench, frame, writing),
    ].filter(shown);
    const box = boundsOf(lying.flatMap(({ items }) => items));
    const named = withLeaders(lying, box, writing);
    const measured = [...named, ...dimensionThings(bench, frame, box, writing).filter(shown)];
    const below = boundsOf(measured.flatMap(({ items }) => items));
    const things = key ? [...measured, ...keyThings(lying, below, writing).filter(shown)] : measured;
    const items = things.flatMap((thing) => thing.items);
    const title = say(
      bench.recipe.size === undefined
        ? text('Plan of {recipe}, seen from the bag side', { recipe: bench.recipe.name })
        : text('Plan of {recipe}, size {size}, seen from the bag side', {
            recipe: bench.recipe.name,
            size: bench.recipe.size,
          }),
    );
    return knownBy({ title, seenFrom: 'bag side', ...boundsOf(items), items, things }, reasons);
  });
}
