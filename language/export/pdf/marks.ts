/** What stands round a drawing on paper: the bar that shows whether it was printed to scale, and marks to lay pages by. */
import { say } from '../../view/text.ts';
import { type Doc, pt } from './document.ts';
import type { PageBox } from './paint.ts';
import { overlap, type Tile, type Tiling, tileName } from './tiles.ts';
import { writeWords } from './words.ts';

/** mm */
export const barLength = 100;

/** A bar of 100 mm of paper with a stroke each 10 mm, from its left end (mm of the page), and words below it. */
export function scaleBar(doc: Doc, x: number, y: number, words = say('100 mm: measure before you cut')): void {
  doc.undash().lineWidth(pt(0.3)).strokeColor('black').lineJoin('miter');
  doc
    .moveTo(pt(x), pt(y))
    .lineTo(pt(x + barLength), pt(y))
    .stroke();
  for (let at = 0; at <= barLength; at += 10) {
    const high = at % 50 === 0 ? 3 : 1.6;
    doc
      .moveTo(pt(x + at), pt(y))
      .lineTo(pt(x + at), pt(y - high))
      .stroke();
  }
  doc.fillColor('black');
  writeWords(doc, words, x, y + 3.4, { height: 1.9, most: barLength });
}

/** Crosses in a ring in the middle of what two neighbours share: laid on each other, the pages lie right. */
export function registrationMarks(doc: Doc, { x, y, width, height }: PageBox): void {
  const half = overlap / 2;
  doc.undash().lineWidth(pt(0.15)).strokeColor('black');
  for (const markX of [x + half, x + width - half]) {
    for (const markY of [y + half, y + height - half]) {
      doc
        .moveTo(pt(markX - 4), pt(markY))
        .lineTo(pt(markX + 4), pt(markY))
        .stroke();
      doc
        .moveTo(pt(markX), pt(markY - 4))
        .lineTo(pt(markX), pt(markY + 4))
        .stroke();
      doc.circle(pt(markX), pt(markY), pt(2)).stroke();
    }
  }
}

/** The names of the neighbours at the edges that they share, and a dashed line through the marks where one goes over the other. */
export function neighbours(doc: Doc, tile: Tile, { box, rows, columns }: Tiling, printed: ReadonlySet<string>): void {
  const half = overlap / 2;
  const { x, y, width, height } = box;
  const middle = { x: x + width / 2, y: y + height / 2 };
  const edges = [
    {
      row: tile.row,
      column: tile.column - 1,
      at: [x + half, middle.y],
      turn: Math.PI / 2,
      from: [x + half, y],
      to: [x + half, y + height],
    },
    {
      row: tile.row,
      column: tile.column + 1,
      at: [x + width - half, middle.y],
      turn: Math.PI / 2,
      from: [x + width - half, y],
      to: [x + width - half, y + height],
    },
    {
      row: tile.row - 1,
      column: tile.column,
      at: [middle.x, y + half],
      turn: 0,
      from: [x, y + half],
      to: [x + width, y + half],
    },
    {
      row: tile.row + 1,
      column: tile.column,
      at: [middle.x, y + height - half],
      turn: 0,
      from: [x, y + height - half],
      to: [x + width, y + height - half],
    },
  ] as const;
  for (const { row, column, at, turn, from, to } of edges) {
    const name = tileName(row, column);
    if (row < 0 || column < 0 || row >= rows || column >= columns || !printed.has(name)) continue;
    doc
      .lineWidth(pt(0.1))
      .strokeColor('#777777')
      .dash(pt(1), { space: pt(2) });
    doc.moveTo(pt(from[0]), pt(from[1])).lineTo(pt(to[0]), pt(to[1])).stroke();
    doc.undash().fillColor('#555555');
    writeWords(doc, name, at[0] - (turn === 0 ? 0 : 1), at[1] - 1, { height: 2.4, anchor: 'middle', angle: turn });
  }
}
