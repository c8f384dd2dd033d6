import type { LangiumCoreServices, TextDocument } from 'langium';
import { type CodeLine, codeLinesOf } from '../view/kept/code-lines.ts';
import { linesOf } from '../view/lines.ts';
import { plainTokensOf } from './plain-tokens.ts';

/** The lines of a document that say something, as it is typed. */
export const codeLinesIn = (services: LangiumCoreServices, document: TextDocument): CodeLine[] =>
  codeLinesOf(linesOf(document.getText(), plainTokensOf(services, document)));
