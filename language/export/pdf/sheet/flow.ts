import { addPage, type Doc, type PageSize } from '../document.ts';
import type { Block } from './blocks.ts';
import type { TableBlocks } from './tables.ts';

export interface Margins {
  readonly side: number;
  readonly top: number;
  readonly bottom: number;
}

/** Blocks down a page, and on to the next: a block is never broken, and a heading never stands at the foot of a page. */
export class Flow {
  private y = 0;
  private heading: Block | undefined;
  private readonly doc: Doc;
  private readonly page: PageSize;
  private readonly margins: Margins;

  constructor(doc: Doc, page: PageSize, margins: Margins) {
    this.doc = doc;
    this.page = page;
    this.margins = margins;
    this.turn();
  }

  get width(): number {
    return this.page.width - 2 * this.margins.side;
  }

  /** of a whole page */
  get room(): number {
    return this.page.height - this.margins.top - this.margins.bottom;
  }

  /** mm left on this page */
  get left(): number {
    return this.page.height - this.margins.bottom - this.y;
  }

  turn(): void {
    addPage(this.doc, this.page);
    this.y = this.margins.top;
  }

  /** Stands above the next block, on the same page. */
  head(block: Block): void {
    this.heading = block;
  }

  put(block: Block, after = 1.5): void {
    const { heading } = this;
    const above = heading === undefined ? 0 : heading.height(this.width) + 1.5;
    const height = block.height(this.width);
    if (above + height > this.left && this.y > this.margins.top) this.turn();
    if (heading !== undefined) {
      heading.paint(this.margins.side, this.y, this.width);
      this.y += above;
      this.heading = undefined;
    }
    block.paint(this.margins.side, this.y, this.width);
    this.y += height + after;
  }

  /** A table row by row; its head stands above it on every page, and never alone. */
  table({ head, rows }: TableBlocks): void {
    for (const [i, row] of rows.entries()) {
      const heights = head.height(this.width) + row.height(this.width);
      const above = i === 0 && this.heading !== undefined ? this.heading.height(this.width) + 1.5 : 0;
      const needed = i === 0 ? above + heights : row.height(this.width);
      if (needed > this.left && this.y > this.margins.top) {
        this.turn();
        this.put(head, 0);
      } else if (i === 0) this.put(head, 0);
      this.put(row, i === rows.length - 1 ? 2 : 0);
    }
  }
}
