import type { IToken } from 'chevrotain';
import type { LangiumCoreServices, TextDocument } from 'langium';
import type { LayupLexer } from '../grammar/lexer.ts';

interface Read {
  readonly version: number;
  readonly text: string;
  readonly tokens: readonly IToken[];
}

/** One reading of a document serves all views until its text changes. */
const readings = new WeakMap<TextDocument, Read>();

/** The words, signs and comments of a document as they are typed. */
export function plainTokensOf(services: LangiumCoreServices, document: TextDocument): readonly IToken[] {
  const known = readings.get(document);
  const text = document.getText();
  if (known !== undefined && known.version === document.version && known.text === text) return known.tokens;
  const tokens = (services.parser.Lexer as LayupLexer).plainTokens(text);
  readings.set(document, { version: document.version, text, tokens });
  return tokens;
}
