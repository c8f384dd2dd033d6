import type { Contour } from '../../calc/outline/contour.ts';
import { contourArea, contourBox } from '../../calc/outline/contour-measure.ts';
import type { Point } from '../../calc/outline/shape.ts';
import type { FlatPiece } from '../../calc/piece/flat-piece.ts';

/** Flat pieces made by hand, so that drawings and files are tested alone. Metres. */

/** tan(90 deg / 4): the bulge of a quarter circle */
const quarter = Math.tan(Math.PI / 8);

/** A rectangle with round corners about the origin, counter-clockwise. */
export function rounded(length: number, width: number, corner: number): Contour {
  const [x, y, c] = [length / 2, width / 2, corner];
  if (c === 0)
    return [
      { x: -x, y: -y },
      { x, y: -y },
      { x, y },
      { x: -x, y },
    ];
  return [
    { x: -x + c, y: -y },
    { x: x - c, y: -y, bulge: quarter },
    { x, y: -y + c },
    { x, y: y - c, bulge: quarter },
    { x: x - c, y },
    { x: -x + c, y, bulge: quarter },
    { x: -x, y: y - c },
    { x: -x, y: -y + c, bulge: quarter },
  ];
}

/** A circle of two half circles, clockwise: a hole. */
export const hole = ({ x, y }: Point, diameter: number): Contour => [
  { x: x - diameter / 2, y, bulge: -1 },
  { x: x + diameter / 2, y, bulge: -1 },
];

export function piece(name: string, cut: Contour, more: Partial<FlatPiece> = {}): FlatPiece {
  const holes = more.holes ?? [];
  const [low, high] = contourBox(cut);
  return {
    name,
    of: name,
    path: 'stack.0',
    kind: 'cloth',
    material: 'triax_680',
    count: 1,
    cut,
    holes,
    darts: [],
    marks: [],
    drills: [],
    grain: 0,
    faceUp: true,
    mayTurn: true,
    area: contourArea(cut) + holes.reduce((sum, each) => sum + contourArea(each), 0),
    length: high.x - low.x,
    width: high.y - low.y,
    ...more,
  };
}

/** A deck ply with a dart, a relief slit, a round hole, notches and a fold line. */
export const deck: FlatPiece = piece(
  'outer',
  [
    { x: -0.45, y: -0.21 },
    { x: -0.02, y: -0.21 },
    { x: 0, y: -0.17 },
    { x: 0.02, y: -0.21 },
    { x: 0.3, y: -0.21 },
    { x: 0.3, y: -0.18 },
    { x: 0.3, y: -0.21 },
    ...rounded(1.18, 0.42, 0.14).slice(1),
  ],
  {
    holes: [hole({ x: 0.25, y: 0.05 }, 0.08)],
    marks: [
      {
        kind: 'notch',
        line: [
          { x: 0.59, y: 0 },
          { x: 0.584, y: 0 },
        ],
        closed: false,
      },
      { kind: 'fold', line: rounded(1.12, 0.36, 0.11), closed: true },
    ],
  },
);

/** A patch at 45 degrees whose other face is up on the table. Not its own mirror image. */
export const pad: FlatPiece = piece(
  'pad',
  [
    { x: 0, y: 0 },
    { x: 0.26, y: 0, bulge: 0.2 },
    { x: 0.2, y: 0.18 },
    { x: 0.04, y: 0.12 },
  ],
  { material: 'biax_440', grain: Math.PI / 4, faceUp: false, count: 2, path: 'stack.4' },
);

/** A sheet of core with holes for resin and a groove. */
export const body: FlatPiece = piece('body', rounded(1.18, 0.42, 0.14), {
  kind: 'core',
  material: 'foam_80',
  grain: undefined,
  path: 'stack.2',
  drills: Array.from({ length: 100 }, (_, i) => ({
    at: { x: -0.45 + (i % 10) * 0.1, y: -0.135 + Math.floor(i / 10) * 0.03 },
    diameter: 0.002,
  })),
  marks: [{ kind: 'groove', line: rounded(0.62, 0.06, 0.01), closed: true, name: 'keel' }],
});

/** A long narrow strip. */
export const keel: FlatPiece = piece('keel', rounded(0.62, 0.06, 0), { material: 'uni_c300', path: 'stack.1' });

/** What a name could try in a file. */
export const hostileName =
  'a<script>&"\'\u0000\u001b]0;x\u0007\n  0\r\nEOF\n%%d^J\\U+0041 \u202eé日\ud800 ../../etc/passwd';

export const allPieces: readonly FlatPiece[] = [deck, keel, body, pad];
