import type { Drawing } from '../../../../calc/drawing/drawing.ts';
import type { Table } from '../../../view/report/section.ts';
import { type Doc, pt } from '../document.ts';
import { type Block, drawn, lengthOfWords, tickBox, words } from './blocks.ts';

const size = 10.5;
const pad = 1.3;
/** mm: written in by hand */
const leastRow = 8;
const picture = { width: 34, narrow: 24, height: 20 };

/** mm of a square to tick in a cell, and beside it; so many stand abreast where there is room */
const boxSize = 5;
const boxGap = 1.5;
const boxesAbreast = 10;

/** Squares to tick, over as many lines as they need. */
function tickBoxes(doc: Doc, count: number): Block {
  const abreast = (width: number): number => Math.max(1, Math.floor((width + boxGap) / (boxSize + boxGap)));
  return {
    height: (width) => Math.ceil(count / abreast(width)) * (boxSize + boxGap) - boxGap,
    paint: (x, y, width) => {
      for (let i = 0; i < count; i++) {
        const [column, line] = [i % abreast(width), Math.floor(i / abreast(width))];
        tickBox(doc, boxSize).paint(x + column * (boxSize + boxGap), y + line * (boxSize + boxGap), boxSize);
      }
    },
  };
}

/** The rows of a table as blocks of their own, its head first, so that it may go on overleaf. */
export interface TableBlocks {
  readonly head: Block;
  readonly rows: readonly Block[];
}

/** `pictures`: a small drawing at the end of each row, under a heading of its own. */
export function tableBlocks(
  doc: Doc,
  { head, right, rows, boxes }: Table,
  pictures?: { readonly head: string; readonly of: readonly (Drawing | undefined)[] },
): TableBlocks {
  const ticked = boxes === undefined ? -1 : head.length - 1;
  const columns = head.map((title, i) => {
    if (i === ticked) {
      const most = Math.max(...(boxes ?? []), 1);
      const least = Math.max(lengthOfWords(doc, `${title} `, { size, weight: 'bold' }), 8) + 2 * pad + 0.3;
      return { least, wanted: Math.max(least, Math.min(most, boxesAbreast) * (boxSize + boxGap) + 2 * pad + 0.3) };
    }
    const cells = rows.map((row) => row[i] ?? '');
    const long = (text: string, weight: 'regular' | 'bold') => lengthOfWords(doc, text, { size, weight });
    const longestWord = (text: string, weight: 'regular' | 'bold') =>
      // the wrapper measures a word with the space behind it, and breaks one that is wider so
      Math.max(0, ...text.split(/\s+/).map((word) => long(`${word} `, weight)));
    // a number is never parted from its unit
    const apart = right.includes(i) ? long : longestWord;
    return {
      wanted: Math.max(long(title, 'bold'), ...cells.map((cell) => long(cell, 'regular')), 12) + 2 * pad + 0.3,
      least: Math.max(longestWord(title, 'bold'), ...cells.map((cell) => apart(cell, 'regular')), 8) + 2 * pad + 0.3,
    };
  });
  const least = columns.reduce((sum, column) => sum + column.least, 0);
  // a picture may be smaller; half a name is another name
  const roomIn = (width: number): number =>
    pictures === undefined ? 0 : Math.max(picture.narrow, Math.min(picture.width, width - least));
  const known = new Map<number, number[]>();
  const widths = (width: number): number[] => {
    const found = known.get(width) ?? shared(columns, width - roomIn(width));
    known.set(width, found);
    return found;
  };
  const row = (cells: readonly string[], weight: 'regular' | 'bold', drawing?: Drawing, ticks = 0): Block => {
    const blocks = head.map((_, i) =>
      ticks > 0 && i === ticked
        ? tickBoxes(doc, ticks)
        : words(doc, cells[i] ?? '', { size, weight, align: right.includes(i) ? 'right' : 'left' }),
    );
    const above = weight === 'bold' && pictures !== undefined ? words(doc, pictures.head, { size, weight }) : undefined;
    const height = (width: number): number => {
      const room = roomIn(width);
      return Math.max(
        weight === 'bold' ? 0 : leastRow,
        drawing === undefined ? 0 : drawn(doc, drawing, picture.height - 2).height(room - 2) + 2,
        above === undefined ? 0 : above.height(room - 2 * pad) + 2 * pad,
        ...blocks.map((block, i) => block.height((widths(width)[i] ?? 0) - 2 * pad) + 2 * pad),
      );
    };
    return {
      height,
      paint: (x, y, width) => {
        const high = height(width);
        const room = roomIn(width);
        let at = x;
        doc
          .undash()
          .lineWidth(pt(weight === 'bold' ? 0.35 : 0.2))
          .strokeColor('black')
          .lineJoin('miter');
        for (const wide of [...widths(width), ...(room === 0 ? [] : [room])]) {
          doc.rect(pt(at), pt(y), pt(wide), pt(high)).stroke();
          at += wide;
        }
        at = x;
        for (const [i, block] of blocks.entries()) {
          const wide = widths(width)[i] ?? 0;
          block.paint(at + pad, y + pad, wide - 2 * pad);
          at += wide;
        }
        above?.paint(at + pad, y + pad, room - 2 * pad);
        if (drawing !== undefined) drawn(doc, drawing, high - 2).paint(at + 1, y + 1, room - 2);
      },
    };
  };
  return {
    head: row(head, 'bold'),
    rows: rows.flatMap((cells, i) =>
      parted(cells).map((each, part) =>
        row(each, 'regular', part === 0 ? pictures?.of[i] : undefined, part === 0 ? boxes?.[i] : undefined),
      ),
    ),
  };
}

/** letters of a cell that surely stand on one page */
const most = 600;

/** A row whose cells hold more than a page does, as several. */
function parted(cells: readonly string[]): readonly (readonly string[])[] {
  const parts = Math.max(1, ...cells.map((cell) => Math.ceil(cell.length / most)));
  if (parts === 1) return [cells];
  const chunks = cells.map((cell) => [
    ...(cell.match(new RegExp(`[\\s\\S]{1,${most}}(?=\\s|$)|[\\s\\S]{1,${most}}`, 'g')) ?? []),
  ]);
  const rows = Math.max(...chunks.map((chunk) => chunk.length));
  return Array.from({ length: rows }, (_, i) => chunks.map((chunk) => (chunk[i] ?? '').trim()));
}

/** The width that no column goes beyond, so that narrow ones keep theirs whole. */
function fairest(columns: readonly { readonly least: number }[], width: number): number {
  let [left, many] = [width, columns.length];
  for (const { least } of [...columns].sort((a, b) => a.least - b.least)) {
    if (least * many >= left) break;
    left -= least;
    many -= 1;
  }
  return left / Math.max(1, many);
}

/** Each column as wide as it wants where all fit; otherwise none under its longest word, the rest shared by what is wanted. */
function shared(columns: readonly { readonly wanted: number; readonly least: number }[], width: number): number[] {
  const wanted = columns.reduce((sum, column) => sum + column.wanted, 0);
  if (wanted <= width) return columns.map((column) => (column.wanted * width) / wanted);
  const least = columns.reduce((sum, column) => sum + column.least, 0);
  // the room beside a picture is what the longest words need, but for rounding
  if (least > width + 1e-6) {
    const most = fairest(columns, width);
    return columns.map((column) => Math.min(column.least, most));
  }
  return columns.map((column) => column.least + ((column.wanted - column.least) * (width - least)) / (wanted - least));
}
