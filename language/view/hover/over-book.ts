import type { HoverBook } from './book.ts';
import { drawingHover } from './drawing.ts';
import type { HoverProvider } from './hover.ts';
import { layerHover } from './layer.ts';
import { materialHover } from './material.ts';
import { quantityHover } from './quantity.ts';
import { recipeHover } from './recipe.ts';
import { ruleHover } from './rule.ts';
import { stepHover } from './step.ts';
import { wordHover } from './word.ts';

/** All hovers: those that ask the book first, then those that know the words alone. */
export function hoversOver(book: HoverBook): readonly HoverProvider[] {
  return [
    ruleHover,
    (document, offset) => layerHover(document, offset, book),
    (document, offset) => materialHover(document, offset, book),
    (document, offset) => recipeHover(document, offset, book),
    (document, offset) => stepHover(document, offset, book),
    (document, offset) => drawingHover(document, offset, book),
    (document, offset) => quantityHover(document, offset, book.style().locale),
    wordHover,
  ];
}
