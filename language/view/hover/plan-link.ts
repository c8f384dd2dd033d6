import type { Recipe } from '../../../calc/model/index.ts';
import { say } from '../text.ts';
import type { HoverBook } from './book.ts';
import { linkEncoded } from './copy-link.ts';

/** The command of the editor that shows the plan beside the text. */
export const planCommand = 'laybook.showPlan';

/** A link that shows the plan of a recipe; empty where the editor runs no links. */
export function planLink(uri: string, { name, size }: Recipe, book: HoverBook): string {
  if (!book.commandLinks) return '';
  const given = [{ uri, recipe: name, ...(size === undefined ? {} : { size }) }];
  return `[${say('Show the plan')}](command:${planCommand}?${linkEncoded(JSON.stringify(given))})`;
}
