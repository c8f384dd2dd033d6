import { isImpossible } from '../../../calc/outcome.ts';
import { samples } from '../../../calc/outline/samples.ts';
import { outOfFrame, type Placed } from '../../../calc/outline/shape.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { coreOf, piecesBeside } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { outsideOf } from './free-edge.ts';
import { footprintOf, outOf, outOfPart, SLACK } from './geometry.ts';

/** How far an insert stands out of the core that it belongs in. */
export interface OffCore {
  readonly core: LaidLayer;
  /** m */
  readonly out: number;
  /** how far inside the finished edge the core ends, m */
  readonly inset: number;
}

/** A joint between two pieces that counts as none, m. */
const JOINT = 0.002;
/** How closely the rim of an insert is walked along, m. */
const STEP = 0.01;

/** Whether a shape lies within pieces of core that are fitted against each other, all round. */
export function standsInPieces(context: RecipeContext, pieces: readonly LaidLayer[], placed: Placed): boolean {
  const rim = samples(placed.shape, STEP);
  const around = pieces.flatMap((piece) => footprintOf(context.bench, piece) ?? []);
  return (
    !isImpossible(rim) &&
    rim
      .map((point) => outOfFrame(placed, point))
      .every((point) => around.some((piece) => outsideOf(piece.placed, point) + piece.inset <= JOINT))
  );
}

/** None where the insert stands in its core; one that hangs over the edge of the part is told of as that. */
export function offCore(context: RecipeContext, layers: readonly LaidLayer[], insert: LaidLayer): OffCore | undefined {
  const core = coreOf(layers, insert);
  const around = core === undefined ? undefined : footprintOf(context.bench, core);
  const own = footprintOf(context.bench, insert);
  if (core === undefined || around === undefined || own === undefined || own.whole) return undefined;
  if ((outOfPart(context.bench, insert) ?? 1) > SLACK) return undefined;
  const out = outOf(own.placed, around.placed)?.by;
  if (out === undefined || out + around.inset <= SLACK || (around.whole && core.layer.inset === undefined))
    return undefined;
  const pieces = piecesBeside(layers, core);
  // a core of several pieces holds what stands in one of them, or across their joint
  if (pieces.length > 1 && standsInPieces(context, pieces, own.placed)) return undefined;
  return { core, out: out + around.inset, inset: around.inset };
}
