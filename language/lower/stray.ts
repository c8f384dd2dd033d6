import type { AstNode } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { type Verb, words } from '../words/index.ts';
import type { Read } from './arguments.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan } from './places.ts';

/**
 * Words that a step has no use for: more names than its row in the table of verbs takes, and none of the words that it knows.
 * `values` are those behind the material.
 */
export function reportStrayWords(low: Lowering, verb: Verb, values: readonly Read[], materialRead: boolean): void {
  const takes = (verb.takes ?? []).filter((argument) => argument.after === undefined);
  const listed = new Set(
    (verb.takes ?? []).flatMap((argument) => [
      ...(argument.words ?? []),
      ...(argument.after === undefined ? [] : [argument.after]),
    ]),
  );
  let names =
    takes.filter((argument) => argument.dimension === 'name' || argument.dimension === 'word').length -
    (materialRead ? 1 : 0);
  if (takes.some((argument) => argument.repeated === true)) return;
  for (const { argument, node } of values) {
    if (argument.kind !== 'word' || listed.has(argument.word)) continue;
    if (names-- > 0) continue;
    low.problem(
      'line/not-understood',
      node,
      text('`{word}` is not understood here; such a line reads {example}', {
        word: argument.word,
        example: verb.example,
      }),
    );
    return;
  }
}

/** Words that stand between the head of a block and its brace, and that the head has no use for. */
export function reportStraysOfHead(low: Lowering, node: AstNode & { readonly strays: readonly string[] }): void {
  const [first] = node.strays;
  if (first === undefined) return;
  const head = node.$cstNode?.text.split(/\s/, 1)[0] ?? '';
  const example = words.find((row) => row.word === head && row.at.includes('recipe'))?.example.split('\n')[0] ?? head;
  low.problem(
    'line/not-understood',
    propertySpan(node, 'strays') ?? node,
    text('`{word}` is not understood here; such a line reads {example}', { word: first, example }),
  );
}
