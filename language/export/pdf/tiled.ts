import { outermostOf } from '../../../calc/drawing/bounds.ts';
import type { Drawing, DrawnItem } from '../../../calc/drawing/drawing.ts';
import { say } from '../../view/text.ts';
import type { Frame } from '../svg-path.ts';
import { addPage, type Doc, finishedPdf, newPdf, type PaperName, papers, pt } from './document.ts';
import { neighbours, registrationMarks, scaleBar } from './marks.ts';
import { type PageBox, paintDrawing, paintItems } from './paint.ts';
import { margins, overlap, type Tile, type Tiling, tiling } from './tiles.ts';
import { lackingLetters, writeWords } from './words.ts';

/** More pages than this nobody lays together. */
export const mostPages = 400;

/** Its message is how many. */
export class TooManyPages extends RangeError {
  override readonly name = 'TooManyPages';
}

export interface MadePdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** letters of its words that the font lacks: each stands as its number */
  readonly lacking: readonly string[];
}

/** The pages that tiling a drawing takes, the overview not counted. */
export const tiledPages = (drawing: Drawing, paper: PaperName): number => {
  const laid = laidOut(drawing, paper);
  return laid.printed.size;
};

interface LaidOut {
  readonly tiles: Tiling;
  /** names of the tiles that show something */
  readonly printed: ReadonlySet<string>;
  readonly onTile: (tile: Tile) => readonly DrawnItem[];
}

function laidOut(drawing: Drawing, paper: PaperName): LaidOut {
  const { low, high, items } = drawing;
  const tiles = tiling({ width: (high.x - low.x) * 1000, height: (high.y - low.y) * 1000 }, paper);
  const boxes = items.map((item) => {
    const points = outermostOf(item);
    const [xs, ys] = [points.map(({ x }) => (x - low.x) * 1000), points.map(({ y }) => (high.y - y) * 1000)];
    return { item, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  });
  const onTile = ({ shows }: Tile): readonly DrawnItem[] =>
    boxes
      .filter(
        ({ left, right, top, bottom }) =>
          left < shows.x + shows.width && right > shows.x && top < shows.y + shows.height && bottom > shows.y,
      )
      .map(({ item }) => item);
  const printed = new Set(tiles.tiles.filter((tile) => onTile(tile).length > 0).map(({ name }) => name));
  return { tiles, printed, onTile };
}

/**
 * A drawing 1:1 on pages of A4 or Letter for shops without a cutter: an overview first, then a page a tile, with marks to lay
 * them by and a bar of 100 mm on each. `more` are lines for the overview, how the pieces lie for instance. Throws `TooManyPages` where it takes more than `mostPages`.
 */
export async function tiledPdf(drawing: Drawing, paper: PaperName, more: readonly string[] = []): Promise<MadePdf> {
  const laid = laidOut(drawing, paper);
  if (laid.printed.size > mostPages) throw new TooManyPages(String(laid.printed.size));
  const doc = newPdf(drawing.title);
  const lacking = lackingLetters(doc, [
    drawing.title,
    ...drawing.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
  ]);
  overview(doc, drawing, laid, paper, more, lacking);
  for (const tile of laid.tiles.tiles) {
    if (laid.printed.has(tile.name)) tilePage(doc, drawing, tile, laid);
  }
  return { bytes: await finishedPdf(doc), pages: 1 + laid.printed.size, lacking };
}

function tilePage(doc: Doc, drawing: Drawing, tile: Tile, { tiles, printed, onTile }: LaidOut): void {
  const { page, box } = tiles;
  addPage(doc, page);
  const frame: Frame = {
    corner: {
      x: drawing.low.x + (tile.shows.x - box.x) / 1000,
      y: drawing.high.y - (tile.shows.y - box.y) / 1000,
    },
    scale: 1000,
  };
  if (printed.size > 1) {
    neighbours(doc, tile, tiles, printed);
    registrationMarks(doc, box);
  }
  paintItems(doc, onTile(tile), frame, box, { leastLetters: 0 });
  const base = page.height - margins.bottom + 8;
  scaleBar(doc, margins.side, base);
  const right = page.width - margins.side;
  writeWords(doc, tile.name, right, base + 3, { height: 6, weight: 'bold', anchor: 'end' });
  const room = right - 20 - (margins.side + 108);
  writeWords(doc, drawing.title, right - 20, base + 3, { height: 2, anchor: 'end', most: room });
}

function overview(
  doc: Doc,
  drawing: Drawing,
  { tiles, printed }: LaidOut,
  paper: PaperName,
  more: readonly string[],
  lacking: readonly string[],
): void {
  const { page } = tiles;
  addPage(doc, page);
  const x = 15;
  const wide = page.width - 2 * x;
  doc.fillColor('black');
  writeWords(doc, drawing.title, x, 22, { height: 4.5, weight: 'bold', most: wide });
  const lines = overviewLines(printed.size, paper, more, lacking);
  for (const [i, line] of lines.entries()) writeWords(doc, line, x, 30 + i * 5, { height: 2.3, most: wide });
  const top = 30 + lines.length * 5;
  const box: PageBox = { x, y: top, width: wide, height: page.height - top - 24 };
  const sheet = sheetBox(tiles);
  const scale = Math.min(1, box.width / sheet.width, box.height / sheet.height);
  const { frame } = paintDrawing(doc, drawing, box, { scale, layers: ['cut'] });
  for (const tile of tiles.tiles) {
    if (printed.has(tile.name)) tileOnOverview(doc, tile, drawing, frame);
  }
  scaleBar(doc, x, page.height - 14);
}

function overviewLines(count: number, paper: PaperName, more: readonly string[], lacking: readonly string[]): string[] {
  const { name } = papers[paper];
  return [
    count === 1
      ? say('One page of {paper} behind this one.', { paper: name })
      : say('{count} pages of {paper} behind this one, by row and column.', { count, paper: name }),
    say('Print at 100 %, not fitted to the page, and measure the bar on a page: 100 mm.'),
    ...(count === 1
      ? []
      : [
          say('Lay neighbours on each other cross on cross; they share {overlap} mm. Tape them, then cut.', {
            overlap,
          }),
        ]),
    ...more,
    ...(lacking.length === 0 ? [] : [lackingWords(lacking)]),
  ];
}

/** What the font lacks, in letters that it has. */
export const lackingWords = (lacking: readonly string[]): string =>
  say('The font lacks {letters}; they stand as their numbers.', {
    letters: lacking
      .map((letter) => `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`)
      .join(', '),
  });

function sheetBox({ tiles }: Tiling): { readonly width: number; readonly height: number } {
  const [first, last] = [tiles[0]?.shows, tiles.at(-1)?.shows];
  if (first === undefined || last === undefined) return { width: 1, height: 1 };
  return { width: last.x + last.width - first.x, height: last.y + last.height - first.y };
}

function tileOnOverview(doc: Doc, { name, shows }: Tile, { low, high }: Drawing, frame: Frame): void {
  const scale = frame.scale / 1000;
  const left = (low.x - frame.corner.x) * frame.scale + shows.x * scale;
  const top = (frame.corner.y - high.y) * frame.scale + shows.y * scale;
  doc.lineWidth(pt(0.15)).strokeColor('#777777').undash();
  doc.rect(pt(left), pt(top), pt(shows.width * scale), pt(shows.height * scale)).stroke();
  const height = Math.min(5, 0.2 * shows.height * scale);
  doc.fillColor('#555555');
  writeWords(doc, name, left + (shows.width / 2) * scale, top + (shows.height / 2) * scale + height / 2, {
    height,
    anchor: 'middle',
  });
}
