import type { Figure, Reason } from '../../../calc/figure/figure.ts';
import { missingOf, reasonsOf } from '../figures.ts';
import type { HoverBook } from '../hover/book.ts';
import { chainText, missingText } from '../hover/chain.ts';
import { plain } from '../hover/markdown.ts';
import { translated } from '../translation.ts';
import type { HintPart, ToldKind } from './part.ts';

/** A hint is looked at in passing: the whole chain is in the hover of the line. */
const short = { deepest: 2, most: 6 };

const names: Readonly<Record<ToldKind, string>> = {
  size: 'Size of the drawn shape',
  mass: 'Wet mass of this line',
  thickness: 'Height above the tool face with this line laid',
  cost: 'Cost of this line',
  minutes: 'Hands, then waiting, of this step',
  amount: 'What this step takes',
};

/** Stands over figures from before the text was broken. */
export const oldWords = 'Old: as it was before a line of this recipe could no longer be read.';

/** What a figure beside a line is, and how it was come by. */
export function hintTooltip({ kind, words, figures }: HintPart, old: boolean, book: HoverBook): string {
  const parts = [
    old ? translated(oldWords) : '',
    `${translated(names[kind])}: ${plain(words)}.`,
    missingText(unique(figures.flatMap(({ figure }) => missingOf(figure))), book),
    ...figures.map(({ of, figure }) => because(of, figure, figures.length > 1, book)),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function because(of: string, figure: Figure<unknown>, named: boolean, book: HoverBook): string {
  const chain = chainText(reasonsOf(figure), book, short);
  if (chain === '') return '';
  return named ? `${plain(translated(of))}:\n\n${chain}` : chain;
}

const unique = (reasons: readonly Reason[]): Reason[] => [...new Set(reasons)];
