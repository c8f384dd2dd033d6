import type { LangiumDocument } from 'langium';

/** What is shown beside a word: Markdown, and the stretch of text that it is about (offsets). */
export interface HoverText {
  readonly markdown: string;
  readonly start: number;
  readonly end: number;
}

/** Answers for the words that it knows about; undefined lets the next one answer. */
export type HoverProvider = (document: LangiumDocument, offset: number) => HoverText | undefined;
