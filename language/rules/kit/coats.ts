import type { RecipeContext } from '../rule.ts';
import { type Wetted, wettedLayers } from './wetted.ts';

/** Each gelcoat with what is laid on it next, coat or cloth, where another step lays that. */
export function coatsAndNext(context: RecipeContext): readonly { readonly coat: Wetted; readonly next: Wetted }[] {
  const wetted = wettedLayers(context);
  return wetted.flatMap((coat, i) => {
    const next = wetted[i + 1];
    const gelcoat = coat.laid.layer.kind === 'coat' && coat.resin.kind === 'gelcoat' && coat.laid.layer.waxed !== true;
    return gelcoat && next !== undefined && next.laid.layer.kind !== 'coat' ? [{ coat, next }] : [];
  });
}
