import type { Drawing } from '../../calc/drawing/drawing.ts';
import type { TiledPdf } from '../export/cut/cut-files.ts';
import type { Sheet } from '../view/sheet/index.ts';

/** What a server does where it runs on a machine of its own, and not in a browser. */
export interface Machine {
  /** a drawing on one page, as base64 */
  readonly pdfOf?: (drawing: Drawing) => Promise<string>;
  /** a drawing 1:1 on pages that are laid together */
  readonly tiledPdf?: TiledPdf;
  /** a build sheet, as base64, and the letters that its font lacks */
  readonly sheetPdf?: (
    sheet: Sheet,
    paper: 'a4' | 'letter',
    font?: string,
  ) => Promise<{ readonly base64: string; readonly lacking: readonly string[] } | { readonly badFont: string }>;
}
