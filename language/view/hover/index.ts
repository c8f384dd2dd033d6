import type { LangiumDocument } from 'langium';
import type { HoverProvider, HoverText } from './hover.ts';
import { quantityHover } from './quantity.ts';
import { wordHover } from './word.ts';

export type { HoverProvider, HoverText } from './hover.ts';

/** Asked in this order; the first that knows the word answers. */
export const hovers: readonly HoverProvider[] = [quantityHover, wordHover];

export function hoverAt(
  document: LangiumDocument,
  offset: number,
  providers: readonly HoverProvider[] = hovers,
): HoverText | undefined {
  for (const provider of providers) {
    const found = provider(document, offset);
    if (found !== undefined) return found;
  }
  return undefined;
}
