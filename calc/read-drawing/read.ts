import { text } from '../figure/figure.ts';
import { nothingDrawn, type ReadDrawing } from './drawn.ts';
import { isBinaryDxf, readDxf } from './dxf/read-dxf.ts';
import { isDxf, mostBytesOf } from './file-kind.ts';
import { readSvg } from './svg/read-svg.ts';

/** What is said of a larger one. */
export const tooLarge = (file: string): ReadDrawing =>
  nothingDrawn({
    kind: 'refused',
    message: text('the drawing is larger than {most} MB; leave the outline in it only', {
      most: mostBytesOf(file) / 1e6,
    }),
  });

/** Reads the text of a drawing by what its file is called. */
export function readDrawing(file: string, source: string): ReadDrawing {
  const beginning = source.slice(0, looked);
  if (source.length <= looked && beginning.trim() === '')
    return nothingDrawn({ kind: 'refused', message: text('the file is empty') });
  // Each second byte of Latin letters in UTF-16 is 0; no SVG or ASCII DXF has such a character.
  if (beginning.includes('\0') && !isBinaryDxf(beginning))
    return nothingDrawn({
      kind: 'refused',
      message: text('the file is no text in UTF-8, but UTF-16 or no text at all: save it as UTF-8'),
    });
  // a character is a byte at least
  if (source.length > mostBytesOf(file)) return tooLarge(file);
  return isDxf(file) ? readDxf(source) : readSvg(source);
}

/** Characters at the beginning that show what kind of text a file is. */
const looked = 1000;
