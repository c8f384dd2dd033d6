import type { Test } from './recipe.ts';
import type { Amount, PlacePoint, Remarks, Unknown } from './value.ts';

export type ProcessKind = 'hand' | 'bagged' | 'infusion' | 'prepreg';

/** What may follow a verb, a preposition or a clause word. */
export type Argument =
  | { readonly kind: 'amount'; readonly amount: Amount }
  | { readonly kind: 'count'; readonly count: number }
  | { readonly kind: 'ratio'; readonly parts: readonly number[] }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'point'; readonly point: PlacePoint }
  | { readonly kind: 'unknown'; readonly value: Unknown };

/** `at 23 degC`, `past edge`, `every 4 pulls`: a preposition or linking word with its arguments. */
export interface Phrase {
  readonly word: string;
  readonly arguments: readonly Argument[];
}

/** `5 coats new`, `80 mm past edge`, `pleats 4 of 40 mm`: begins with a word or a number. */
export interface StepClause extends Phrase {
  readonly path: string;
  readonly phrases: readonly Phrase[];
}

export interface Lay {
  readonly what: 'stack' | 'rest' | 'kit' | 'layers';
  readonly first?: string;
  readonly last?: string;
  readonly resin?: string;
}

/** A process step is data: `verb [material] {, clause}`, at most with a block. `language/words` says what a verb means. */
export interface Step extends Remarks {
  readonly path: string;
  /** `clean`, `release`, `leak test`, `lay`, `do` ...; two-word verbs joined by one space */
  readonly verb: string;
  /** of a feed, a vent */
  readonly name?: string;
  readonly material?: string;
  readonly arguments: readonly Argument[];
  readonly phrases: readonly Phrase[];
  readonly clauses: readonly StepClause[];
  readonly steps?: readonly Step[];
  readonly lay?: Lay;
  /** of `check "..."` and `do "..."` */
  readonly text?: string;
  readonly test?: Test;
}

export interface Process extends Remarks {
  readonly path: string;
  readonly kind?: ProcessKind;
  readonly resin?: string;
  readonly temperature?: Amount;
  readonly steps: readonly Step[];
}
