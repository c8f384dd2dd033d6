import type { AstNode } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { onceFor } from '../../calc/kept.ts';
import { type Verb, words } from '../words/index.ts';
import type { Read } from './arguments.ts';
import type { Lowering } from './lowering.ts';
import { propertySpan } from './places.ts';

/**
 * Words that a step has no use for: more names than its row in the table of verbs takes, and none of the words that it knows.
 * `values` are those behind the material.
 */
export function reportStrayWords(low: Lowering, verb: Verb, values: readonly Read[], materialRead: boolean): void {
  const { repeated, listed, most } = namesOf(verb);
  if (repeated) return;
  let names = most - (materialRead ? 1 : 0);
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

/** What a verb takes by name, and the words that it knows. */
const namesOf = onceFor(({ takes = [] }: Verb) => {
  const first = takes.filter((argument) => argument.after === undefined);
  return {
    repeated: first.some((argument) => argument.repeated === true),
    listed: new Set(takes.flatMap(({ words: known = [], after }) => (after === undefined ? known : [...known, after]))),
    most: first.filter(({ dimension }) => dimension === 'name' || dimension === 'word').length,
  };
});

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
