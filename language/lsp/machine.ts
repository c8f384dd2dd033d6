import type { Drawing } from '../../calc/drawing/drawing.ts';

/** What a server does where it runs on a machine of its own, and not in a browser. */
export interface Machine {
  /** a drawing on one page, as base64 */
  readonly pdfOf?: (drawing: Drawing) => Promise<string>;
}
