import { text } from '../../calc/figure/figure.ts';
import { either } from '../../calc/figure/listed.ts';
import type { Junk, Unknown, UnknownBlock } from '../grammar/generated/ast.ts';
import { nearestWords } from '../words/nearest.ts';
import type { Lowering } from './lowering.ts';
import { headSpan, propertySpan } from './places.ts';

/** Words that may begin a line, by the block around it; `language/words` holds what they mean. */
const beginnings: Readonly<Record<string, string>> = {
  book: 'shop fibre fabric prepreg resin gelcoat catalyst paste core consumable tool recipe record notation',
  recipe: 'revision quantity handed let part stack process load expect size note',
  stack: 'coat ply strip patch core insert repeat mirror note',
};

/** A line that begins with no word of its block; the nearest ones are offered. */
export function reportUnknownLine(
  low: Lowering,
  line: Unknown | UnknownBlock | Junk,
  block: keyof typeof beginnings,
): void {
  const words = (beginnings[block] ?? '').split(' ');
  const near = nearestWords(line.head, words);
  const head = propertySpan(line, 'head');
  low.problem(
    'line/not-understood',
    headSpan(line),
    near.length > 0
      ? text('`{word}` begins no line here: is {near} meant?', { word: line.head, near: either(near) })
      : text('`{word}` begins no line here; these do: {words}', { word: line.head, words: words.join(', ') }),
    head === undefined
      ? []
      : near.map((word) => ({
          title: text('Write {what}', { what: word }),
          edits: [{ offset: head.offset, end: head.end, text: word }],
        })),
  );
}
