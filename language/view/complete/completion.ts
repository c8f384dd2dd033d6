import { translated } from '../translation.ts';
/** What kind of thing is offered; an editor shows a picture for each. */
export type CompletionSort =
  | 'block'
  | 'word'
  | 'verb'
  | 'value'
  | 'link'
  | 'unit'
  | 'rule'
  | 'material'
  | 'tool'
  | 'recipe'
  | 'layer'
  | 'zone'
  | 'feed'
  | 'vent'
  | 'let'
  | 'load'
  | 'size'
  | 'end';

/** One thing that may stand at the cursor. */
export interface Completion {
  readonly label: string;
  readonly sort: CompletionSort;
  /** put in place of the text from `start` up to `end` (offsets) */
  readonly insert: string;
  readonly start: number;
  readonly end: number;
  /** `insert` has places to fill: `${1:20 mm}` */
  readonly snippet?: true;
  /** what is compared with what is typed, where it is not the label */
  readonly filter?: string;
  /** behind the label, on one line */
  readonly detail?: string;
  /** Markdown */
  readonly documentation?: string;
}

/** Collects what is offered, each label once, in the order in which it is shown. */
export class Offers {
  readonly #seen = new Set<string>();
  readonly #all: Completion[] = [];
  readonly #start: number;
  readonly #end: number;

  constructor(start: number, end: number) {
    this.#start = start;
    this.#end = end;
  }

  add(
    offer: Omit<Completion, 'start' | 'end' | 'insert'> & Partial<Pick<Completion, 'start' | 'end' | 'insert'>>,
  ): void {
    if (this.#seen.has(offer.label)) return;
    this.#seen.add(offer.label);
    const detail = offer.detail === undefined ? {} : { detail: translated(offer.detail) };
    this.#all.push({ start: this.#start, end: this.#end, insert: offer.label, ...offer, ...detail });
  }

  get all(): readonly Completion[] {
    return this.#all;
  }
}
