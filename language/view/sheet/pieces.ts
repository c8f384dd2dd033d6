import { sketchOfPiece } from '../../../calc/drawing/of-piece.ts';
import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { layerDryMass } from '../../../calc/laminate/mass.figure.ts';
import type { Contour } from '../../../calc/outline/contour.ts';
import { contourBox } from '../../../calc/outline/contour-measure.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import { flatPieces } from '../../../calc/piece/flat-pieces.figure.ts';
import { type PieceMass, pieceMasses } from '../../../calc/piece/piece-mass.figure.ts';
import { ANGLE, LENGTH, MASS } from '../../../calc/quantity/index.ts';
import type { LayerRow, Report } from '../../../calc/report.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { cutsLaidWords } from '../piece-words.ts';
import type { Table } from '../report/section.ts';
import { type Style, say, show } from '../text.ts';
import type { CutRow } from './sheet.ts';
import { alike, namesTogether, neighboursAlike } from './together.ts';

export const cutHead = (): string[] => [
  say('piece'),
  say('material'),
  say('how many'),
  say('length'),
  say('width'),
  say('angle'),
  say('mind'),
];

/** mm of the small drawing beside a piece */
const sketchBox = { length: 0.038, width: 0.02 };

/** What to cut, a line a piece: every layer and every sheet of the process, with a small drawing. */
export function cutRows(report: Report, bench: Bench, style: Style): CutRow[] {
  const pieces = bench.ask(flatPieces);
  if (!isKnown(pieces)) return [];
  const parts = report.quantity;
  const rows = pieces.value.map((piece) => {
    const row = report.layers.find(({ laid }) => laid.name === piece.of);
    const mind = [...(row === undefined ? [] : remarksOf(row, style)), ...pieceRemarks(piece, style)].join(', ');
    return { piece, mind };
  });
  return alike(rows, ({ piece, mind }) => `${mind} ${shapeKey(piece)}`).flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const { piece, mind } = first;
    const count = same.reduce((sum, { piece: each }) => sum + each.count, 0);
    return {
      cells: [
        namesTogether(same.map(({ piece: each }) => each.name)),
        piece.material ?? '',
        parts === 1 ? String(count) : say('{count} ({all} in all)', { count, all: count * parts }),
        show(quantity(piece.length, LENGTH), style),
        show(quantity(piece.width, LENGTH), style),
        piece.grain === undefined ? '' : show(quantity(piece.grain, ANGLE), style),
        mind,
      ],
      sketch: sketchOfPiece(piece, sketchBox),
    };
  });
}

/** Equal for pieces that one template cuts, wherever they lie in the part. */
function shapeKey(piece: FlatPiece): string {
  const [low] = contourBox(piece.cut);
  // steps of 10 um: what was worked out in another place differs by less
  const at = (x: number, y: number) => [Math.round((x - low.x) * 1e5), Math.round((y - low.y) * 1e5)];
  const line = (contour: Contour) => contour.map(({ x, y, bulge }) => [...at(x, y), Math.round((bulge ?? 0) * 1e5)]);
  return JSON.stringify([
    piece.kind,
    piece.material,
    piece.grain === undefined ? undefined : Math.round(piece.grain * 1e5),
    piece.faceUp,
    piece.hand,
    line(piece.cut),
    piece.holes.map(line),
    piece.marks.map(({ kind, line: of, name }) => [kind, line(of), name]),
    piece.drills.map(({ at: point, diameter }) => [at(point.x, point.y), diameter]),
  ]);
}

function pieceRemarks(piece: FlatPiece, style: Style): string[] {
  const { lane, hand } = piece;
  return [
    ...(lane === undefined
      ? []
      : [say('lane {number} of {of}, lapped {lap}', { ...lane, lap: quantity(lane.lap, LENGTH) }, style)]),
    ...(hand === undefined ? [] : [show(hand)]),
    ...cutsLaidWords(piece, style),
  ];
}

/** Dry pieces with what each must weigh as it is cut: a piece of the wrong cloth is found on the balance. */
export function weighTable({ layers }: Report, bench: Bench, style: Style): Table {
  const known = bench.ask(pieceMasses);
  // where the pieces are not known, what the layers weigh in the part
  const pieces = isKnown(known) ? known.value : layers.flatMap(({ laid }) => inThePart(laid, bench));
  const told = ({ material = '', mass }: PieceMass): string => `${material} ${show(quantity(mass, MASS), style)}`;
  const rows = alike(pieces, told).map((same) => {
    const [{ material = '', mass } = { material: '', mass: 0 }] = same;
    const shown = { count: same.length, mass: quantity(mass, MASS), all: quantity(mass * same.length, MASS) };
    return [
      namesTogether(same.map(({ piece }) => piece)),
      material,
      same.length === 1 ? show(shown.mass, style) : say('{mass} each, {count} together {all}', shown, style),
      '',
    ];
  });
  return { head: [say('piece'), say('material'), say('as cut'), say('as weighed')], right: [2], rows };
}

function inThePart({ key, name, layer: { material } }: LaidLayer, bench: Bench): PieceMass[] {
  const dry = bench.ask(layerDryMass, key);
  if (!isKnown(dry) || !(dry.value > 0)) return [];
  return [{ piece: name, mass: dry.value, ...(material === undefined ? {} : { material }) }];
}

/** More squares than this are no line to be ticked. */
const mostBoxes = 40;

/** The layers that a step lays, in the order they go down. */
export function layTable(layers: readonly LaidLayer[], style: Style): Table | undefined {
  if (layers.length === 0) return undefined;
  const rows = layers.map((laid) => ({
    name: laid.name,
    cells: [
      laid.layer.material ?? '',
      angleOf(laid, style),
      [...turnsOf(laid, style), ...(laid.layer.notes ?? [])].join(', '),
    ],
  }));
  // each is ticked by itself, though neighbours that differ in nothing but their number share a line
  const together = neighboursAlike(
    rows,
    ({ name, cells }) => JSON.stringify([name.replace(/\d+$/, ''), cells]),
    mostBoxes,
  );
  return {
    head: [say('lay'), say('material'), say('angle'), say('mind'), say('done')],
    right: [],
    rows: together.map((same) => [namesTogether(same.map(({ name }) => name)), ...(same[0]?.cells ?? []), '']),
    boxes: together.map(({ length }) => length),
  };
}

const angleOf = ({ angle }: LaidLayer, style: Style): string =>
  angle === undefined ? '' : show(quantity(angle, ANGLE), style);

/** How a piece lies: the roll's upper side, quarter turns, and the turn of a mirrored piece. */
function turnsOf(laid: LaidLayer, style: Style): string[] {
  const { layer, mirrored, turnedOver } = laid;
  return [
    ...(turnedOver ? [say('turned over')] : []),
    ...(layer.faceDown ? [say('face down')] : []),
    ...(layer.turned === undefined ? [] : [say('turned {angle}', { angle: layer.turned }, style)]),
    ...(mirrored === undefined
      ? []
      : [
          mirrored.turn === 0
            ? say('mirrors {of}', { of: mirrored.of })
            : say('mirrors {of}: a turn of {turn}', { of: mirrored.of, turn: quantity(mirrored.turn, ANGLE) }, style),
        ]),
    ...(layer.joins ?? []).map((join) => (join.kind === 'butt' ? say('butt join') : say('lap join'))),
  ];
}

function remarksOf({ laid, wrap, darts }: LayerRow, style: Style): string[] {
  const length = (si: number) => quantity(si, LENGTH);
  const need = darts !== undefined && isKnown(darts) ? darts.value : undefined;
  const wrapped = wrap !== undefined && isKnown(wrap) ? wrap.value : undefined;
  return [
    ...turnsOf(laid, style),
    ...(wrapped === undefined
      ? []
      : [
          say(
            '{reach} past the outline, lands {landing} on {onto}',
            { reach: length(wrapped.reach), landing: length(wrapped.landing), onto: wrapped.onto },
            style,
          ),
        ]),
    ...(need === undefined || need.darts + need.slits === 0
      ? []
      : [
          say(
            (need.typed?.darts ?? need.darts) === 1
              ? '1 dart {width} wide, {depth} deep'
              : '{darts} darts {width} wide, {depth} deep',
            {
              darts: need.typed?.darts ?? need.darts,
              width: length(need.typed?.width ?? need.width),
              depth: length(need.depth),
            },
            style,
          ),
        ]),
  ];
}
