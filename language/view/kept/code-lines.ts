import { entryHeads } from '../../grammar/braces.ts';
import { endOf } from '../../grammar/tokens.ts';
import { continues, isComment, type Line } from '../lines.ts';

/** A line with its words as they are typed; lines that go on with it, and comments, are left out. */
export interface CodeLine {
  /** offset of its first word */
  readonly start: number;
  /** offset behind its last word or sign that is no comment */
  readonly end: number;
  /** its words and signs, with those of the lines that go on with it; one space between them */
  readonly text: string;
  /** its first word, and the second one if that is a name: `ply outer`, `tape sealant_12`, `hold` */
  readonly key: string;
  readonly head: string;
  /** it stands at the margin and opens an entry */
  readonly opensEntry: boolean;
}

const name = /^[A-Za-z_]\w*$/;

/** The lines of a text that say something. */
export function codeLinesOf(lines: readonly Line[]): CodeLine[] {
  const found: CodeLine[] = [];
  for (const line of lines) {
    const words = line.tokens.filter((token) => !isComment(token));
    const [first, second] = words;
    const last = words.at(-1);
    if (first === undefined || last === undefined) continue;
    const text = words.map(({ image }) => image).join(' ');
    const before = found.at(-1);
    if (before !== undefined && continues(line)) {
      found[found.length - 1] = { ...before, text: `${before.text} ${text}` };
      continue;
    }
    found.push({
      start: first.startOffset,
      end: endOf(last),
      text,
      key: second !== undefined && name.test(second.image) ? `${first.image} ${second.image}` : first.image,
      head: first.image,
      opensEntry: first.startOffset === line.start && entryHeads.has(first.image),
    });
  }
  return found;
}
