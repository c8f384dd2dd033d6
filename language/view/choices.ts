import type { AstNode } from 'langium';
import * as ast from '../grammar/generated/ast.ts';
import type { Word } from '../words/index.ts';
import { choiceOf } from './words.ts';

/** The word that a value stands behind: `trim net`, `wait until gel`, `edge round`. */
function wordBefore(node: AstNode | undefined): string {
  switch (node?.$type) {
    case ast.Step.$type:
      return (node as ast.Step).verb;
    case ast.Phrase.$type:
      return (node as ast.Phrase).word;
    case ast.Part.$type:
      return (node as ast.Part).prep;
    case ast.Datum.$type:
      return (node.$container as ast.Fact | ast.MaterialFact).key;
    default:
      return '';
  }
}

/** One of the few words that may stand behind a word. It means that even where something bears the same name. */
export function choiceAt(node: AstNode, text: string): Word | undefined {
  return node.$type === ast.WordArg.$type ? choiceOf(wordBefore(node.$container), text) : undefined;
}
