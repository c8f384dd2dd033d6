import type { Blank } from '../../../words/sheet-blanks.ts';
import { type Doc, pt } from '../document.ts';
import { type Block, lengthOfWords, tickBox, words } from './blocks.ts';

/** A label with what it says, or with room to write on. */
export interface Piece {
  readonly label: string;
  readonly value?: string;
  /** mm to write on */
  readonly line?: number;
  readonly box?: boolean;
  readonly unit?: string;
}

/** Labelled values and blanks one after another, over as many lines as they need; none is broken that fits a line. */
export function flowing(doc: Doc, pieces: readonly Piece[], size: number): Block {
  const high = Math.max(size * 0.55, pieces.some(({ line, box }) => line !== undefined || box) ? 8 : 0);
  const lengthOf = ({ label, value, line, box, unit }: Piece): number =>
    (box ? 7 : 0) +
    lengthOfWords(doc, label, { size }) +
    (value === undefined ? 0 : lengthOfWords(doc, value, { size, weight: 'bold' })) +
    (line ?? 0) +
    (unit === undefined ? 0 : 1 + lengthOfWords(doc, unit, { size }));
  const placed = (width: number) => {
    let [x, y, next] = [0, 0, 0];
    const at = pieces.map((piece) => {
      const long = lengthOf(piece);
      const broken = long > width ? words(doc, wholeOf(piece), { size, weight: 'bold' }) : undefined;
      if (x > 0 && x + long > width) [x, y] = [0, next];
      const here = { piece, broken, x, y };
      next = Math.max(next, y + (broken?.height(width) ?? high));
      x += long + 5;
      return here;
    });
    return { at, height: next };
  };
  return {
    height: (width) => (pieces.length === 0 ? 0 : placed(width).height),
    paint: (x, y, width) => {
      for (const { piece, broken, x: dx, y: dy } of placed(width).at) {
        if (broken === undefined) paintPiece(doc, piece, x + dx, y + dy, high, size);
        else broken.paint(x, y + dy, width);
      }
    },
  };
}

/** Of a value that no line holds. */
const wholeOf = ({ label, value = '', line, unit = '' }: Piece): string =>
  `${label}${value}${line === undefined ? '' : '_'.repeat(12)} ${unit}`.trim();

function paintPiece(
  doc: Doc,
  { label, value, line, box, unit }: Piece,
  x: number,
  y: number,
  high: number,
  size: number,
): void {
  let at = x;
  const base = y + (high - size * 0.42) / 2;
  if (box) {
    tickBox(doc, 5).paint(at, y + (high - 5) / 2, 5);
    at += 7;
  }
  words(doc, label, { size }).paint(at, base, 400);
  at += lengthOfWords(doc, label, { size });
  if (value !== undefined) {
    words(doc, value, { size, weight: 'bold' }).paint(at, base, 400);
    at += lengthOfWords(doc, value, { size, weight: 'bold' });
  }
  if (line !== undefined) {
    const foot = base + size * 0.4;
    doc.undash().lineWidth(pt(0.3)).strokeColor('black');
    doc
      .moveTo(pt(at), pt(foot))
      .lineTo(pt(at + line), pt(foot))
      .stroke();
    at += line;
  }
  if (unit !== undefined) words(doc, unit, { size }).paint(at + 1, base, 400);
}

/** What must be written down. */
export const blankLines = (doc: Doc, each: readonly Blank[], size: number): Block =>
  flowing(
    doc,
    each.map(({ label, unit, box }) =>
      box ? { label, box: true } : { label: `${label} `, line: 24, ...(unit === undefined ? {} : { unit }) },
    ),
    size,
  );
