import { sketchOfPiece } from '../../../calc/drawing/of-piece.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import { screenSvg } from '../../export/svg.ts';
import { cutsLaidWords } from '../piece-words.ts';
import { say } from '../text.ts';
import type { HoverBook } from './book.ts';
import { linkEncoded } from './copy-link.ts';
import { plain } from './markdown.ts';

/** The room of the picture, mm of paper. */
const room = { length: 0.07, width: 0.04 };
/** of the picture on the screen */
const pixels = 260;
/** An editor cuts a hover off at 100,000 characters, and its words come after the picture. */
const mostCharacters = 60_000;

/**
 * The piece as it is cut, as a small picture with words for whom it says nothing; empty where the editor shows no pictures. Dark lines on
 * white: a picture does not know the colours of the editor.
 */
export function piecePicture([piece, ...others]: readonly FlatPiece[], size: string, book: HoverBook): string {
  if (piece === undefined || !book.commandLinks) return '';
  const svg = screenSvg(sketchOfPiece(piece, room), { styled: true, paper: '#ffffff', around: 2 });
  const address = `data:image/svg+xml,${linkEncoded(svg)}`;
  if (address.length > mostCharacters) return '';
  const darts = piece.darts.length;
  const figures = { name: piece.name, size, darts, others: others.length };
  const words =
    others.length > 0
      ? say('Flat piece {name}, one of {others} more', figures)
      : darts === 0
        ? say('Flat piece {name}, {size}', figures)
        : darts === 1
          ? say('Flat piece {name}, {size}, one dart or slit', figures)
          : say('Flat piece {name}, {size}, {darts} darts and slits', figures);
  const beside = cutsLaidWords(piece, book.style()).map((line) => `\n\n${plain(line)}`);
  return `![${plain(words)}](${address}|width=${pixels})${beside.join('')}`;
}
