/** Where something stands in a file; lines and characters from zero. */
export interface WirePlace {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
  /** `sled_deck.layup:14` */
  readonly name: string;
}

/** A stretch of a text, as the protocol of language servers has it. */
export interface WireRange {
  readonly start: WirePosition;
  readonly end: WirePosition;
}

export interface WirePosition {
  readonly line: number;
  readonly character: number;
}

/** One statement of a chain of reasons, in words, with those that it rests on. */
export interface WireReason {
  readonly words: string;
  readonly source?: string;
  readonly at?: WirePlace;
  readonly reasons: readonly WireReason[];
}
