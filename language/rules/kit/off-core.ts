import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { coreOf } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { footprintOf, outOf, outOfPart, SLACK } from './geometry.ts';

/** How far an insert stands out of the core that it belongs in. */
export interface OffCore {
  readonly core: LaidLayer;
  /** m */
  readonly out: number;
  /** how far inside the finished edge the core ends, m */
  readonly inset: number;
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
  return { core, out: out + around.inset, inset: around.inset };
}
