import type { ReadDrawing } from './drawn.ts';
import { readDxf } from './dxf/read-dxf.ts';
import { readSvg } from './svg/read-svg.ts';

/** Reads the text of a drawing by what its file is called. */
export const readDrawing = (file: string, source: string): ReadDrawing =>
  /\.dxf$/i.test(file) ? readDxf(source) : readSvg(source);
