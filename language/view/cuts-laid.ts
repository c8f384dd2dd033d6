import { quantity } from '../../calc/figure/figure.ts';
import type { FlatPiece } from '../../calc/piece/flat-piece.ts';
import { LENGTH } from '../../calc/quantity/index.ts';
import { type Style, say } from './text.ts';

/** What is cut as the piece is laid and is drawn nowhere on it. */
export function cutsLaidWords({ cutsLaid }: FlatPiece, style: Style): readonly string[] {
  if (cutsLaid === undefined) return [];
  const figures = { count: cutsLaid.count, width: quantity(cutsLaid.width, LENGTH) };
  return cutsLaid.kind === 'dart'
    ? [say('not drawn: up to {count} darts of {width}, cut where it folds as laid', figures, style)]
    : [say('not drawn: up to {count} slits of {width}, cut where it bridges as laid', figures, style)];
}
