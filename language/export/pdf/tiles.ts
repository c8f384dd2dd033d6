/** How a drawing that is larger than a page is cut into pages that are laid together. All in mm of paper at 1:1. */
import { type PageSize, type PaperName, pageSize } from './document.ts';
import type { PageBox } from './paint.ts';

/** Beside the drawing on a page: what printers cannot reach, and below it the bar of 100 mm. */
export const margins = { side: 10, top: 10, bottom: 18 } as const;

/** Neighbours share this much, so that a page need not be trimmed to be laid on the next. */
export const overlap = 10;

export interface Tile {
  /** `B3`: the row by its letter from above, the column by its number from the left */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** what it shows of the drawing, mm from the drawing's upper left corner, y downwards */
  readonly shows: PageBox;
}

export interface Tiling {
  readonly page: PageSize;
  /** the box of each page that shows the drawing, mm from its upper left corner */
  readonly box: PageBox;
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
}

/** The fewest pages for a drawing of a size (mm): upright or lying, whichever takes fewer, upright if both are alike. */
export function tiling(size: PageSize, paper: PaperName): Tiling {
  const [upright, lying] = [false, true].map((landscape) => tilingOn(size, pageSize(paper, landscape)));
  if (upright === undefined || lying === undefined) throw new Error('there are two ways to lay a page');
  return lying.tiles.length < upright.tiles.length ? lying : upright;
}

function tilingOn(size: PageSize, page: PageSize): Tiling {
  const box: PageBox = {
    x: margins.side,
    y: margins.top,
    width: page.width - 2 * margins.side,
    height: page.height - margins.top - margins.bottom,
  };
  const [stepX, stepY] = [box.width - overlap, box.height - overlap];
  const columns = Math.max(1, Math.ceil((size.width - overlap) / stepX - 1e-9));
  const rows = Math.max(1, Math.ceil((size.height - overlap) / stepY - 1e-9));
  // What is over lies half on either side.
  const left = (size.width - columns * stepX - overlap) / 2;
  const top = (size.height - rows * stepY - overlap) / 2;
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    return {
      name: tileName(row, column),
      row,
      column,
      shows: { x: left + column * stepX, y: top + row * stepY, width: box.width, height: box.height },
    };
  });
  return { page, box, rows, columns, tiles };
}

/** `A1`, `Z9`, `AA10`. */
export function tileName(row: number, column: number): string {
  let letters = '';
  for (let rest = row + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return `${letters}${column + 1}`;
}
