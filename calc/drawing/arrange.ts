import type { FlatPiece } from '../piece/flat-piece.ts';
import { boundsOf } from './bounds.ts';
import type { Drawing, DrawnItem } from './drawing.ts';
import { movedItem } from './move.ts';
import { type Label, onRoll, pieceItems, roomOnRoll } from './of-piece.ts';

/** Between pieces that lie side by side, m: room for a blade and for a slip of the cloth (common practice). */
const gap = 0.01;

export interface ToCut {
  readonly piece: FlatPiece;
  readonly label: Label;
  /** how many of it */
  readonly count: number;
}

export interface Arranged {
  readonly drawing: Drawing;
  /** what it takes of the roll, m */
  readonly length: number;
  /** pieces that are wider than the roll: they stand in rows of their own, past its edge */
  readonly tooWide: readonly FlatPiece[];
  /** how many pieces lie there */
  readonly count: number;
}

/**
 * The pieces of one material side by side, the warp of each along the roll (x): rows across the roll, each begun where the
 * one before is longest. `width` of the roll (m); without one every piece begins a row. They are set down in the order given,
 * long ones first; laying them closely is another matter.
 */
export function arranged(title: string, pieces: readonly ToCut[], width: number | undefined): Arranged {
  const items: DrawnItem[] = [];
  const tooWide = new Set<FlatPiece>();
  const across = width ?? 0;
  let row = { start: 0, end: 0, filled: 0 };
  let count = 0;
  for (const { piece, label, count: copies } of longestFirst(pieces)) {
    const room = roomOnRoll(piece);
    const lying = pieceItems(piece, label, onRoll(piece));
    const { low } = boundsOf(lying.filter(({ layer }) => layer === 'cut'));
    if (width !== undefined && room.across > width * (1 + 1e-9)) tooWide.add(piece);
    for (let i = 0; i < copies; i++) {
      if (row.filled > 0 && row.filled + room.across > across + 1e-9)
        row = { start: row.end + gap, end: row.end + gap, filled: 0 };
      const by = { x: row.start - low.x, y: row.filled - low.y };
      for (const item of lying) items.push(movedItem({ by }, item));
      row = {
        start: row.start,
        end: Math.max(row.end, row.start + room.along),
        filled: row.filled + room.across + gap,
      };
      count++;
    }
  }
  const drawing: Drawing = { title, seenFrom: 'bag side', ...boundsOf(items), items };
  return { drawing, length: row.end, tooWide: [...tooWide], count };
}

/** Pieces of a like length share a row; those alike stay together. */
const longestFirst = (pieces: readonly ToCut[]): readonly ToCut[] =>
  pieces
    .map((each, i) => ({ each, i, along: roomOnRoll(each.piece).along }))
    .sort((a, b) => b.along - a.along || a.i - b.i)
    .map(({ each }) => each);
