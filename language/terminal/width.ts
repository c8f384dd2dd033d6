import { safe } from '../view/text.ts';

/*
 * How wide text is on a terminal, cell by cell: Unicode Standard Annex #11 (East Asian Width, classes W and F) by script, and
 * emoji that are drawn as such; marks that combine with the character before them take no room.
 */
const noRoom = /^(?:\p{Mn}|\p{Me}|\u200b|\u200c|\u200d)$/u;
const twoCells =
  /^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303e\uff01-\uff60\uffe0-\uffe6]$/u;

export function widthOf(text: string): number {
  let cells = 0;
  for (const character of text) cells += cellsOf(character);
  return cells;
}

const cellsOf = (character: string): number => {
  if (character >= ' ' && character <= '~') return 1;
  if (noRoom.test(character)) return 0;
  return twoCells.test(character) ? 2 : 1;
};

const tabStop = 4;

/** A line as it is shown, and the cell at which each UTF-16 unit of it begins; one more for its end. */
export interface Cells {
  readonly text: string;
  readonly at: readonly number[];
}

/** Tabs become spaces, and what must not reach a screen a sign that something stands there. */
export function cellsOfLine(line: string): Cells {
  const at: number[] = [];
  let text = '';
  let cells = 0;
  for (const character of line) {
    for (let unit = 0; unit < character.length; unit++) at.push(cells);
    const shown =
      character === '\t' ? ' '.repeat(tabStop - (cells % tabStop)) : safe(character) === '' ? '\ufffd' : character;
    text += shown;
    cells += widthOf(shown);
  }
  return { text, at: [...at, cells] };
}

/** Fills up with spaces, on the left where `right` is set. */
export function padded(text: string, cells: number, right = false): string {
  const fill = ' '.repeat(Math.max(0, cells - widthOf(text)));
  return right ? fill + text : text + fill;
}

/** Words on lines of at most so many cells; a longer word stands alone. */
export function wrapped(text: string, cells: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > cells) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, line];
}
