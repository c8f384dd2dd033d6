import type { Text, Words } from '../../calc/figure/figure.ts';
import type { Span } from './places.ts';

/** One replacement in the text of the same document. */
export interface TextEdit extends Span {
  readonly text: string;
}

export interface Fix {
  readonly title: Words;
  readonly edits: readonly TextEdit[];
}

/** What reading a line found; becomes a finding of the rule named, as information about the text, not about the part. */
export interface Problem {
  readonly rule: string;
  readonly message: Text;
  readonly span: Span;
  readonly path?: string;
  readonly fixes?: readonly Fix[];
  readonly related?: readonly { readonly span: Span; readonly message: Text }[];
}

/** `accept RULE "reason"`: silences the rule on the line that it stands on. */
export interface AcceptLine {
  readonly rule: string;
  readonly reason: string;
  /** path of the line that is spoken for */
  readonly line: string;
  /** the line heads a block: its statements are not meant */
  readonly block: boolean;
  readonly span: Span;
}
