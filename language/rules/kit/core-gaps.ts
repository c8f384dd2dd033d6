import { CLEARANCE } from '../../../calc/core/core.figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { shapeBounds } from '../../../calc/outline/measure.ts';
import type { Placed } from '../../../calc/outline/shape.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { namedLayers } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { footprintOf } from './geometry.ts';
import { clauseAt, layersOf, valueOf } from './layers.ts';
import { metres } from './shown.ts';

/** Widest gap that the resin does not race through, m. Common practice. */
export const WIDEST: Usual = {
  habit: 'gap',
  what: 'gap beside a core that the resin does not race through',
  value: metres(0.002),
  source: 'common practice',
};

/** A gap this many times as wide as the core is thick is a place left free on purpose, into which the skin goes down. */
export const LEFT_FREE = 2;

/** Free room beside something that stands in a core, or between two cores. */
export interface CoreGap {
  /** m */
  readonly gap: number;
  /** of the clause or the line that makes it so */
  readonly at: string;
  /** a clause of the core says it, which may be written anew */
  readonly clause: boolean;
}

/** What is left free beside the strips in the grooves of a core: typed, by the width of the groove, or the habit of the shop. */
export function roomBesideStrips(context: RecipeContext, core: LaidLayer): readonly CoreGap[] {
  return (core.layer.grooves ?? []).flatMap((groove): readonly CoreGap[] => {
    if (groove.clearance !== undefined)
      return [{ gap: groove.clearance.si, at: clauseAt(core, 'clearance'), clause: true }];
    const strip = groove.strip === undefined ? undefined : namedLayers(layersOf(context), groove.strip)[0];
    const shape = strip === undefined ? undefined : footprintOf(context.bench, strip)?.placed.shape;
    if (shape?.kind !== 'rectangle') return [];
    const gap =
      groove.width === undefined ? valueOf(usual(context.bench, CLEARANCE)) : (groove.width.si - shape.width) / 2;
    return gap === undefined ? [] : [{ gap, at: groove.path, clause: false }];
  });
}

interface Box {
  readonly low: { readonly x: number; readonly y: number };
  readonly high: { readonly x: number; readonly y: number };
}

/** A rectangle that stands straight, by its corners. */
function boxOf(placed: Placed | undefined): Box | undefined {
  if (placed === undefined || placed.shape.kind !== 'rectangle' || Math.abs(placed.angle ?? 0) > 1e-9) return undefined;
  const bounds = shapeBounds(placed.shape);
  if (isImpossible(bounds)) return undefined;
  const { centre } = placed;
  return {
    low: { x: bounds.low.x + centre.x, y: bounds.low.y + centre.y },
    high: { x: bounds.high.x + centre.x, y: bounds.high.y + centre.y },
  };
}

/** Where two straight rectangles face each other: across `x` or `y`, by how much they are apart, and the middle of that; m. */
export interface Joint {
  readonly axis: 'x' | 'y';
  readonly gap: number;
  readonly at: number;
}

/** None where they do not face each other, or overlap. */
export function jointOf(a: Placed | undefined, b: Placed | undefined): Joint | undefined {
  const [one, two] = [boxOf(a), boxOf(b)];
  if (one === undefined || two === undefined) return undefined;
  const across = (axis: 'x' | 'y'): Joint => {
    const [before, after] = one.low[axis] < two.low[axis] ? [one, two] : [two, one];
    return {
      axis,
      gap: after.low[axis] - before.high[axis],
      at: (after.low[axis] + before.high[axis]) / 2,
    };
  };
  const [x, y] = [across('x'), across('y')];
  if (x.gap > -1e-9 && y.gap < -1e-9) return x;
  return y.gap > -1e-9 && x.gap < -1e-9 ? y : undefined;
}
