import type { Reason } from '../../../calc/figure/figure.ts';
import type { EntryKey, Place } from '../../../calc/model/index.ts';
import type { Caution } from '../cautions.ts';
import type { Style } from '../text.ts';

/** Rows under a head; a cell is plain text. */
export interface Table {
  readonly head: readonly string[];
  /** columns of numbers, set to the right */
  readonly right: readonly number[];
  readonly rows: readonly (readonly string[])[];
  /** squares to tick in the last cell of each row */
  readonly boxes?: readonly number[];
}

/** One part of a report, told as text, as Markdown or on a page. */
export interface Section {
  readonly title: string;
  /** a sentence that says what stands below */
  readonly lead: string;
  readonly table?: Table;
  readonly lines?: readonly string[];
}

export interface Telling {
  readonly style: Style;
  /** key of the recipe's entry */
  readonly recipe: EntryKey;
  /** what can hurt, step by step */
  readonly cautions: readonly Caution[];
  /** `sled_deck.layup:14` */
  place(at: Place): string | undefined;
}

/** `words (file:line)` */
export function withPlace(words: string, at: Reason['at'], telling: Telling): string {
  const place = at === undefined ? undefined : telling.place(at);
  return place === undefined ? words : `${words} (${place})`;
}
