import type { Drawing } from '../../calc/drawing/drawing.ts';
import type { TiledPdf } from '../export/cut/cut-files.ts';

/** What a server does where it runs on a machine of its own, and not in a browser. */
export interface Machine {
  /** a drawing on one page, as base64 */
  readonly pdfOf?: (drawing: Drawing) => Promise<string>;
  /** a drawing 1:1 on pages that are laid together */
  readonly tiledPdf?: TiledPdf;
}
