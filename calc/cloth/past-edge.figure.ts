import { type Bench, type Figure, ifKnown, known, knownBy, text, typed } from '../figure/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { wrapReach } from './wrap.figure.ts';

/** Past the finished edge, by the way that the layer ends; m. */
export function clothPastEdge(bench: Bench, laid: LaidLayer): Figure<number> {
  const { extent, oversize } = laid.layer;
  const at = inRecipe(bench, laid.path);
  if (extent.kind === 'wrap')
    return ifKnown(bench.ask(wrapReach, laid.key), (wrap, reasons) => knownBy(wrap.reach, reasons));
  if (oversize !== undefined)
    return ifKnown(typed(oversize, text('the oversize of {layer}', { layer: laid.name }), at), (oversize, reasons) =>
      knownBy(oversize.si, reasons),
    );
  if (extent.kind !== 'to trim') return known(0);
  const part = bench.recipe.part;
  const allowance = typed(part?.trimAllowance, 'the trim allowance', inRecipe(bench, part?.path ?? ''));
  return ifKnown(allowance, (allowance, reasons) => knownBy(allowance.si, reasons));
}
