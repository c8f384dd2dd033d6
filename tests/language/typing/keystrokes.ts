/** A text typed from nothing, key by key, as an editor takes it in: it closes brackets and quotes, and indents new lines, by itself. */

export interface Typed {
  readonly text: string;
  /** where the cursor stands */
  readonly cursor: number;
}

const closing: Readonly<Record<string, string>> = { '{': '}', '(': ')', '"': '"' };

/** What stands in the editor after each key. A brace that closes a block is there already: the cursor goes past it. */
export function* keystrokes(source: string): Generator<Typed> {
  let before = '';
  /** what the editor has put behind the cursor, the nearest first */
  let behind: string[] = [];
  let quoted = false;
  for (let at = 0; at < source.length; at++) {
    const key = source[at] as string;
    if (quoted) {
      quoted = key !== '"';
      if (!quoted) behind = behind.slice(1);
    } else if (key === '"') {
      quoted = true;
      behind = ['"', ...behind];
    } else if (key === '{' || key === '(') {
      behind = [closing[key] as string, ...behind];
    } else if (key === '}' || key === ')') {
      behind = behind.slice(1);
    } else if (key === '\n') {
      // Enter, with the indent of the next line and the brace on a line of its own
      const indent = /^ */.exec(source.slice(at + 1))?.[0] ?? '';
      const closes = source[at + 1 + indent.length] === '}';
      if (source[at - 1] === '{' && behind[0] === '}') {
        const outer = indent.slice(closes ? 0 : 2);
        behind = [`\n${outer}}`, ...behind.slice(1)];
      }
      if (closes) {
        before += key + indent;
        at += indent.length;
        continue;
      }
      before += key + indent;
      at += indent.length;
      yield { text: `${before}${behind.join('')}\n`, cursor: before.length };
      continue;
    }
    before += key;
    yield { text: `${before}${behind.join('')}\n`, cursor: before.length };
  }
}
