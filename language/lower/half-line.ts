import { text } from '../../calc/figure/figure.ts';
import type { Fact, MaterialFact } from '../grammar/generated/ast.ts';
import { type Place, wordAt } from '../words/index.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan } from './places.ts';

/** Blocks that know lines of their own form beside their facts, as messages call them. */
const blocks: Readonly<Record<string, Place>> = { 'a part': 'part', 'a recipe': 'recipe', 'a size': 'size' };

/** A line that begins with a word of its block, and goes on as no such line does: `outline r`. Whether it was one. */
export function reportHalfLine(low: Lowering, node: Fact | MaterialFact, what: string): boolean {
  const place = blocks[what];
  const example = place && wordAt(node.key, place)?.example;
  const span = nodeSpan(node);
  const rest = /^\S+\s+(?<rest>(?<word>\S+).*)/.exec(node.$cstNode?.text.trimEnd() ?? '')?.groups;
  if (example === undefined || span === undefined || rest === undefined) return false;
  const { rest: words = '', word = '' } = rest;
  const start = span.offset + (node.$cstNode?.text.indexOf(words, node.key.length) ?? 0);
  low.problem(
    'line/not-understood',
    { offset: start, end: start + words.length },
    text('the line is not understood from `{word}` on; such a line reads {example}', { word, example }),
  );
  return true;
}
