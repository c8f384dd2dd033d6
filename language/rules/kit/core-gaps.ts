import { CLEARANCE } from '../../../calc/core/core.figure.ts';
import { usual } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { shapeBounds } from '../../../calc/outline/measure.ts';
import type { Placed } from '../../../calc/outline/shape.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { namedLayers } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { footprintOf } from './geometry.ts';
import { clauseAt, layersOf, valueOf } from './layers.ts';

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

/** The gap between two straight rectangles that face each other, m; none where they do not, or overlap. */
export function gapBetweenPieces(a: Placed | undefined, b: Placed | undefined): number | undefined {
  const [one, two] = [boxOf(a), boxOf(b)];
  if (one === undefined || two === undefined) return undefined;
  const apart = (axis: 'x' | 'y'): number => Math.max(two.low[axis] - one.high[axis], one.low[axis] - two.high[axis]);
  const [x, y] = [apart('x'), apart('y')];
  if (x > 0 && y < -1e-9) return x;
  return y > 0 && x < -1e-9 ? y : undefined;
}
