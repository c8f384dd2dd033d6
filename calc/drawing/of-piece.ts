import type { Contour } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import type { FlatPiece, Mark } from '../piece/flat-piece.ts';
import { boundsOf, letterWidth } from './bounds.ts';
import type { Drawing, DrawnItem, Source } from './drawing.ts';
import { blockPlace } from './label-place.ts';
import { type Move, movedAngle, movedItem, movedLine } from './move.ts';

/** What stands on a piece, line by line: its name first. */
export type Label = readonly string[];

/** Lines that are folded, that show what lies elsewhere, or that are cut another day, are dashed. */
const dashedMarks: ReadonlySet<Mark['kind']> = new Set(['fold', 'centre line', 'join', 'cutout']);

/** Marks that words would stand across. */
const recesses: ReadonlySet<Mark['kind']> = new Set(['groove', 'insert', 'pocket']);

/** A piece that is turned over when it is laid is the mirror image of what lies in the mould. */
const onTable = ({ faceUp }: FlatPiece): Move => ({ mirrored: !faceUp });

/** How a piece lies on its roll: the warp along x. */
export function onRoll(piece: FlatPiece, turned = false): Move {
  const table = onTable(piece);
  const warp = piece.grain === undefined ? 0 : movedAngle(table, piece.grain);
  return { ...table, turn: (turned ? Math.PI : 0) - warp };
}

/** The items of a piece after a move: what is cut, pen lines, holes to drill, and the label with the grain beside it. */
export function pieceItems(piece: FlatPiece, label: Label, move: Move = onTable(piece)): readonly DrawnItem[] {
  const source: Source = { path: piece.path, name: piece.name };
  const shape: DrawnItem[] = [
    { kind: 'line', layer: 'cut', source, points: piece.cut, closed: true },
    ...piece.holes.map((hole): DrawnItem => ({ kind: 'line', layer: 'cut', source, points: hole, closed: true })),
    ...piece.marks.map(
      (mark): DrawnItem => ({
        kind: 'line',
        layer: 'mark',
        source,
        points: mark.line,
        closed: mark.closed,
        ...(dashedMarks.has(mark.kind) ? { dashed: true } : {}),
      }),
    ),
    ...piece.drills.map(
      ({ at, diameter }): DrawnItem => ({ kind: 'circle', layer: 'drill', source, centre: at, radius: diameter / 2 }),
    ),
  ];
  const moved = shape.map((item) => movedItem(move, item));
  const around = [
    piece.cut,
    ...piece.holes,
    ...piece.marks.flatMap(({ kind, line }) => (recesses.has(kind) ? [line] : [])),
  ].map((line) => movedLine(move, line, true));
  return [
    ...moved,
    ...labelItems(around, label, piece.grain === undefined ? undefined : movedAngle(move, piece.grain), source),
  ];
}

/** Distance of the lines of a label, in heights of its capitals. */
const pitch = 1.7;

/** The label about its own middle: the way of the warp to the left, the words beside it. */
function labelItems(
  around: readonly Contour[],
  label: Label,
  warp: number | undefined,
  source: Source,
): readonly DrawnItem[] {
  const most = Math.max(0, ...label.map((line) => [...line].length));
  const across = Math.max(1, label.length) * pitch;
  // In heights of a capital: a square for the arrow with a gap behind it, then the words.
  const arrow = warp === undefined ? 0 : across + 1;
  const along = arrow + most * letterWidth;
  const { middle, upright, height } = blockPlace(around, (h) => ({ along: along * h, across: across * h }));
  const move: Move = { turn: upright ? Math.PI / 2 : 0, by: middle };
  const lines = label.map(
    (text, i): DrawnItem => ({
      kind: 'text',
      layer: 'text',
      source,
      at: { x: (arrow - along / 2) * height, y: (across / 2 - i * pitch - 1) * height },
      height,
      text,
    }),
  );
  const items =
    warp === undefined
      ? lines
      : [arrowAt(((across - along) / 2) * height, across * height, warp - (move.turn ?? 0), source), ...lines];
  return items.map((item) => movedItem(move, item));
}

/** The way of the warp: an arrow with both ends in a square of this side, its middle on the x axis. */
function arrowAt(x: number, side: number, angle: number, source: Source): DrawnItem {
  const [dx, dy] = [0.46 * side * Math.cos(angle), 0.46 * side * Math.sin(angle)];
  return { kind: 'arrow', layer: 'text', source, from: { x: x - dx, y: -dy }, to: { x: x + dx, y: dy }, heads: 'both' };
}

/** The drawing of one piece as it lies on the cutting table. */
export function drawingOfPiece(piece: FlatPiece, label: Label): Drawing {
  const items = pieceItems(piece, label);
  return {
    title: label[0] ?? piece.name,
    seenFrom: piece.faceUp ? 'bag side' : 'tool side',
    ...boundsOf(items),
    items,
  };
}

/** A small picture of a piece that fits a box (m): its edge, its holes and the way of its warp, without words. */
export function sketchOfPiece(piece: FlatPiece, box: { readonly length: number; readonly width: number }): Drawing {
  const table = onTable(piece);
  const source: Source = { path: piece.path, name: piece.name };
  const edge = [piece.cut, ...piece.holes].map(
    (points): DrawnItem => movedItem(table, { kind: 'line', layer: 'cut', source, points, closed: true }),
  );
  const { low, high } = boundsOf(edge);
  const scale = Math.min(box.length / (high.x - low.x), box.width / (high.y - low.y));
  const middle = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 };
  const small = { scale, by: { x: -middle.x * scale, y: -middle.y * scale } };
  const items = edge.map((item) => movedItem(small, item));
  if (piece.grain !== undefined)
    items.push(arrowAt(0, 0.6 * Math.min(box.length, box.width), movedAngle(table, piece.grain), source));
  return { title: piece.name, seenFrom: piece.faceUp ? 'bag side' : 'tool side', ...boundsOf(items), items };
}

/** The room that a piece takes on its roll: along it and across it, m. */
export function roomOnRoll(piece: FlatPiece): { readonly along: number; readonly across: number } {
  const edge = movedItem(onRoll(piece), { kind: 'line', layer: 'cut', points: piece.cut, closed: true });
  const [low, high] = contourBox(edge.kind === 'line' ? edge.points : []);
  return { along: high.x - low.x, across: high.y - low.y };
}
