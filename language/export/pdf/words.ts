import { safe } from '../../view/text.ts';
import { capitalHeight } from '../letters.ts';
import { type Doc, hasLetter, pt } from './document.ts';
import { fontOf, type Weight } from './fonts.ts';
import { lineOf, runsLeftwards, widthOf, writeRuns } from './set-line.ts';

export interface WordsStyle {
  /** of capitals, mm */
  readonly height: number;
  readonly weight?: Weight;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** rad, counter-clockwise */
  readonly angle?: number;
  /** the words are set smaller where they would be longer, mm */
  readonly most?: number;
}

/** Signs that take no room or only shape others: nothing is missing where the font has none of them. */
const noInk = /^[\p{Cf}\p{Mn}\s]$/u;

/** Letters that the font lacks stand as their number, never as an empty box: `[U+65E5]`. */
export function spelled(doc: Doc, words: string): string {
  return [...safe(words)]
    .map((letter) => {
      if (hasLetter(doc, letter) || noInk.test(letter)) return letter;
      const code = letter.codePointAt(0) ?? 0;
      return `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`;
    })
    .join('');
}

/** The letters of some words that the font lacks, each once, in order of their number. */
export function lackingLetters(doc: Doc, words: readonly string[]): readonly string[] {
  doc.font(fontOf(doc, 'regular'));
  const lacking = new Set(words.flatMap((each) => [...safe(each)].filter((a) => !hasLetter(doc, a) && !noInk.test(a))));
  return [...lacking].sort((a, b) => (a.codePointAt(0) ?? 0) - (b.codePointAt(0) ?? 0));
}

/** Sets the font for words of a height (of capitals, mm). */
export function setFont(doc: Doc, height: number, weight: Weight = 'regular'): void {
  doc.font(fontOf(doc, weight)).fontSize(pt(height) / capitalHeight);
}

/** The length of a line in the font that is set, points. */
export const lengthInPoints = (doc: Doc, line: string): number =>
  runsLeftwards(line) ? widthOf(doc, lineOf(line)) : doc.widthOfString(line);

/** The length of words in a height, mm. */
export function lengthOf(doc: Doc, words: string, height: number, weight: Weight = 'regular'): number {
  setFont(doc, height, weight);
  return (lengthInPoints(doc, spelled(doc, words)) * 25.4) / 72;
}

/** One line of words on its base line at a point (mm from the upper left corner); what was asked stands in no second line. */
export function writeWords(doc: Doc, words: string, x: number, y: number, style: WordsStyle): void {
  const { weight = 'regular', anchor = 'start', angle = 0, most } = style;
  let height = style.height;
  if (most !== undefined) height *= Math.min(1, most / Math.max(lengthOf(doc, words, height, weight), 1e-9));
  setFont(doc, height, weight);
  const line = spelled(doc, words);
  const length = lengthInPoints(doc, line);
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? length / 2 : length;
  doc.save().translate(pt(x), pt(y));
  if (angle !== 0) doc.rotate((-angle * 180) / Math.PI);
  if (runsLeftwards(line)) writeRuns(doc, lineOf(line), -back, 0, { baseline: 'alphabetic' });
  else doc.text(line, -back, 0, { lineBreak: false, baseline: 'alphabetic' });
  doc.restore();
}
