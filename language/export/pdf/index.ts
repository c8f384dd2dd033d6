/** All that makes PDF files. It is loaded only when one is made; in the packed programs it is `pdf.cjs`. */
export { papers } from './document.ts';
export { drawingPdf } from './one-page.ts';
export { FontError, sheetPdf } from './sheet/index.ts';
export { mostPages, tiledPages, tiledPdf } from './tiled.ts';
