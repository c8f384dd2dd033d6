import { text } from '../../calc/figure/figure.ts';
import type { Fact } from '../grammar/generated/ast.ts';
import { wordAt } from '../words/index.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan } from './places.ts';

/** A line of a recipe that begins as a block does and has neither braces nor lines below it: `stack` alone. Whether it was one. */
export function reportBareBlock(low: Lowering, line: Fact): boolean {
  const example = wordAt(line.key, 'recipe')?.example;
  const brace = example?.indexOf('{') ?? -1;
  if (example === undefined || brace < 0) return false;
  const span = nodeSpan(line);
  const typed = line.$cstNode?.text.trimEnd() ?? line.key;
  const end = span === undefined ? 0 : span.offset + typed.length;
  low.problem(
    'line/missing-brace',
    span === undefined ? line : { offset: span.offset, end },
    text('`{block}` is a block and lacks its braces: {example}', { block: line.key, example }),
    span === undefined ? [] : [{ title: 'Open and close the block', edits: [{ offset: end, end, text: ' {\n  }' }] }],
  );
  return true;
}
