import { quantity } from '../../calc/figure/figure.ts';
import type { FlatPiece } from '../../calc/piece/flat-piece.ts';
import { LENGTH } from '../../calc/quantity/index.ts';
import { type Style, say } from './text.ts';

/** `1.2 m by 400 mm in 2 lanes` */
export const pieceWords = (length: string, width: string, lanes: number): string =>
  lanes < 2
    ? say('{length} by {width}', { length, width })
    : say('{length} by {width} in {lanes} lanes', { length, width, lanes });

/** What is cut as the piece is laid and is drawn nowhere on it. */
export function cutsLaidWords({ cutsLaid }: FlatPiece, style: Style): readonly string[] {
  if (cutsLaid === undefined) return [];
  const figures = { count: cutsLaid.count, width: quantity(cutsLaid.width, LENGTH) };
  if (cutsLaid.count === 1)
    return cutsLaid.kind === 'dart'
      ? [say('not drawn: one dart of {width}, cut where it folds as laid', figures, style)]
      : [say('not drawn: one slit of {width}, cut where it bridges as laid', figures, style)];
  return cutsLaid.kind === 'dart'
    ? [say('not drawn: up to {count} darts of {width}, cut where it folds as laid', figures, style)]
    : [say('not drawn: up to {count} slits of {width}, cut where it bridges as laid', figures, style)];
}
