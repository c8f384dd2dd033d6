import { type Figure, isCannot, isKnown, isNotYet } from '../../../calc/figure/figure.ts';
import type { HintKind } from '../../protocol/hint-kinds.ts';
import type { Part } from '../kept/kept-lines.ts';
import { translated } from '../translation.ts';

/** What is told beside a line: what may be chosen, and sizes that are read from drawings. */
export type ToldKind = HintKind | 'size';

/** A figure of a line, with what it rests on. */
export interface HintPart extends Part {
  readonly kind: ToldKind;
  /** one for each time that the line is laid */
  readonly figures: readonly { readonly of: string; readonly figure: Figure<unknown> }[];
}

export interface Asked {
  readonly kind: ToldKind;
  /** `thickness` of "thickness ?" */
  readonly what: string;
  readonly figures: HintPart['figures'];
}

/** The part of a hint, with words for its values once all of them are known; none where nothing computes it yet, or there is nothing of it. */
export function partOf({ kind, what, figures }: Asked, say: () => string): HintPart | undefined {
  if (figures.length === 0 || figures.some(({ figure }) => isNotYet(figure))) return undefined;
  if (figures.every(({ figure }) => isKnown(figure))) {
    const words = say();
    return words === '' ? undefined : { kind, words, known: true, figures };
  }
  return figures.some(({ figure }) => isCannot(figure))
    ? { kind, words: `${translated(what)} ?`, known: false, figures }
    : undefined;
}

/** The values of figures that are known. */
export const valuesOf = <T>(figures: readonly { readonly figure: Figure<T> }[]): T[] =>
  figures.flatMap(({ figure }) => (isKnown(figure) ? [figure.value] : []));

export const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
