import { type Levels, levelsOf, type Run, rightToLeft, runsOf } from './bidi.ts';
import type { Doc } from './document.ts';

/** Whether a text needs more than the library does by itself. */
export const runsLeftwards = (text: string): boolean => rightToLeft.test(text);

/** A run is laid out in one, and not word by word as the library does it. */
const whole = { features: ['kern'] as PDFKit.Mixins.OpenTypeFeatures[] };

/** The shaper turns a run round where its first letter with a script of its own is of such a one. */
function asked({ letters, leftwards }: Run): string {
  const first = letters.find((letter) => !/[\p{Script=Common}\p{Script=Inherited}]/u.test(letter));
  const turned = first !== undefined && rightToLeft.test(first);
  return (turned === leftwards ? letters : [...letters].reverse()).join('');
}

/** Length of the runs of a line, points, in the font that is set. */
export const widthOf = (doc: Doc, runs: readonly Run[]): number =>
  runs.reduce((sum, run) => sum + doc.widthOfString(asked(run), whole), 0);

/** One line of words as runs from left to right. */
export function lineOf(text: string): readonly Run[] {
  const letters = [...text];
  return runsOf(letters, levelsOf(letters));
}

/** Where a line ends that shows no spaces at its end. */
function withoutBlanks(letters: readonly string[], from: number, to: number): number {
  let end = to;
  while (end > from && letters[end - 1] === ' ') end--;
  return end;
}

/** Where a line breaks: behind spaces, and within a word only where that is longer than the line. */
function broken(doc: Doc, letters: readonly string[], levels: Levels, width: number): (readonly [number, number])[] {
  const fits = (from: number, to: number): boolean =>
    widthOf(doc, runsOf(letters, levels, from, withoutBlanks(letters, from, to))) <= width;
  const found: (readonly [number, number])[] = [];
  let [from, word] = [0, 0];
  for (let i = 1; i <= letters.length; i++) {
    if (i < letters.length && letters[i - 1] !== ' ') continue;
    if (!fits(from, i)) {
      if (word > from) found.push([from, word]);
      from = Math.max(word, from);
      while (from < i && !fits(from, i)) {
        let to = from + 1;
        while (to < i && fits(from, to + 1)) to++;
        found.push([from, to]);
        from = to;
      }
    }
    word = i;
  }
  return from < letters.length ? [...found, [from, letters.length]] : found;
}

/** A text in lines of a width (points), each as runs from left to right, in the font that is set. */
export function setLines(doc: Doc, text: string, width: number): readonly (readonly Run[])[] {
  return text.split('\n').flatMap((paragraph) => {
    const letters = [...paragraph];
    const levels = levelsOf(letters);
    const lines = broken(doc, letters, levels, width).map(([from, to]) =>
      runsOf(letters, levels, from, withoutBlanks(letters, from, to)),
    );
    return lines.length === 0 ? [[]] : lines;
  });
}

/** Writes the runs of a line from a point on, in the font that is set. */
export function writeRuns(
  doc: Doc,
  runs: readonly Run[],
  x: number,
  y: number,
  options: Pick<PDFKit.Mixins.TextOptions, 'baseline'> = {},
): void {
  let at = x;
  for (const run of runs) {
    const words = asked(run);
    doc.text(words, at, y, { ...options, ...whole, lineBreak: false });
    at += doc.widthOfString(words, whole);
  }
}
