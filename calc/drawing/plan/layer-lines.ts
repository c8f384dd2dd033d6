import { type WrapReach, wrapReach } from '../../cloth/wrap.figure.ts';
import { quantity, type Text, text } from '../../figure/figure.ts';
import { type Bench, isKnown } from '../../figure/index.ts';
import type { Contour } from '../../outline/contour.ts';
import type { Point } from '../../outline/shape.ts';
import { clothContours } from '../../piece/cloth-contours.figure.ts';
import { cutInWords } from '../../piece/dart-words.ts';
import type { Dart, FlatPiece, Mark } from '../../piece/flat-piece.ts';
import { flatPiecesOf } from '../../piece/flat-pieces.figure.ts';
import { LENGTH } from '../../quantity/index.ts';
import { type Footprint, layerFootprint } from '../../stack/footprint.figure.ts';
import { laidStack } from '../../stack/laid.figure.ts';
import type { LaidLayer } from '../../stack/laid.ts';
import { isCloth } from '../../stack/order.ts';
import { boxRoundLine } from '../bounds.ts';
import type { DrawingLayer, DrawnItem } from '../drawing.ts';
import { footprintContours } from './contours.ts';
import { perforationThings } from './perforation-lines.ts';
import { type Pen, penOf, type Thing, type Writing } from './thing.ts';
import { allOver, centredAt, layerWords, longBy, pastOutline, tagOf } from './words.ts';

export const layerOf = ({ layer: { kind } }: LaidLayer): DrawingLayer =>
  kind === 'core' || kind === 'insert' || kind === 'coat' ? kind : 'cloth';

/** Lines on a piece that are to be seen in the plan too; others repeat the outline or are for the cutting table. */
const seenMarks: ReadonlySet<Mark['kind']> = new Set(['groove', 'pocket', 'score', 'chamfer', 'join']);

/** Every layer of the stack from the tool side, each where it lies on the part; a coat has nothing but its row. */
export function layerThings(bench: Bench, writing: Writing): Thing[] {
  const stack = bench.ask(laidStack);
  return isKnown(stack) ? stack.value.layers.flatMap((laid) => thingsOf(bench, laid, writing)) : [];
}

function thingsOf(bench: Bench, laid: LaidLayer, writing: Writing): Thing[] {
  const layer = layerOf(laid);
  const source = { path: laid.path, name: laid.name };
  const footprint = bench.ask(layerFootprint, laid.key);
  const base = {
    layer,
    source,
    what: text('{name}: {what}', { name: laid.name, what: layerWords(laid) }),
    ...(isCloth(laid) && laid.angle !== undefined ? { hatch: laid.angle } : {}),
  };
  if (laid.layer.kind === 'coat') return [{ ...base, where: allOver, size: text('a coat'), items: [] }];
  if (!isKnown(footprint)) return [{ ...base, where: text('cannot tell'), size: text('cannot tell'), items: [] }];
  const found = bench.ask(flatPiecesOf, laid.key);
  const pieces = isKnown(found) ? found.value : [];
  const past = pastOf(bench, laid);
  const wrap = laid.layer.extent.kind === 'wrap' ? bench.ask(wrapReach, laid.key) : undefined;
  const wrapped = wrap !== undefined && isKnown(wrap) ? wrap.value : undefined;
  // where the piece cannot be told, its place on the face still can
  const cuts = pieces.length === 0 ? footprintContours(footprint.value, 0) : pieces.map(({ cut }) => cut);
  const pen = penOf(layer, source);
  const { whole } = footprint.value;
  // cloth that goes round an edge or up a side does not lie where it is drawn
  const folded = wrapped !== undefined || (whole && isCloth(laid) && bench.recipe.part?.sides !== undefined);
  const look = {
    ...(!whole && base.hatch !== undefined ? { hatch: base.hatch } : {}),
    ...(folded ? { dashed: true } : {}),
  };
  return [
    {
      ...base,
      where: whereOf(laid, footprint.value, past, wrapped),
      size: sizeOf(cuts, pieces),
      ...(whole && past !== 0 ? { tag: tagOf(laid.name, past) } : {}),
      items: [
        ...cuts.map((contour) => pen.line(contour, look)),
        ...pieces.flatMap((piece) => inside(piece, pen)),
        ...landing(footprint.value, wrapped, pen),
        ...label(laid, footprint.value, cuts, pen, writing),
      ],
    },
    ...perforationThings(laid, pieces),
  ];
}

function inside({ holes, marks }: FlatPiece, pen: Pen): DrawnItem[] {
  return [
    ...holes.map((hole) => pen.line(hole)),
    ...marks
      .filter(({ kind }) => seenMarks.has(kind))
      .map(({ line, closed, kind }) => pen.line(line, { closed, ...(kind === 'pocket' ? { dashed: true } : {}) })),
  ];
}

/** How far the layer runs past the outline, m, up the sides too. */
function pastOf(bench: Bench, laid: LaidLayer): number {
  if (!isCloth(laid)) return 0;
  const contours = bench.ask(clothContours, laid.key);
  return isKnown(contours) ? contours.value.out : 0;
}

/** How far in a wrapped ply lands on the face. */
function landing(footprint: Footprint, wrap: WrapReach | undefined, pen: Pen): DrawnItem[] {
  if (wrap === undefined || wrap.landing <= 0) return [];
  return footprintContours(footprint, -wrap.landing).map((line) => pen.line(line, { dashed: true }));
}

/** The name of what lies somewhere on the part stands on it. */
function label(
  laid: LaidLayer,
  { whole, placed }: Footprint,
  contours: readonly Contour[],
  pen: Pen,
  { height }: Writing,
): DrawnItem[] {
  const [line] = contours;
  if (whole || line === undefined) return [];
  const { low, high } = boxRoundLine(line);
  // an insert often lies below a patch: their names have places of their own
  if (laid.layer.kind === 'insert')
    return [
      pen.text({ x: placed.centre.x, y: (low.y + high.y) / 2 - height / 2 }, height, laid.name, { anchor: 'middle' }),
    ];
  return [pen.text({ x: low.x + height, y: low.y + 0.4 * height }, height, laid.name)];
}

function whereOf(laid: LaidLayer, { whole, placed }: Footprint, past: number, wrap: WrapReach | undefined): Text {
  const { extent } = laid.layer;
  if (wrap !== undefined)
    return text('round the edge onto {onto}: {reach} past the outline, {landing} of it on the face', {
      onto: wrap.onto,
      reach: quantity(wrap.reach, LENGTH),
      landing: quantity(wrap.landing, LENGTH),
    });
  if (extent.kind === 'zone') return text('over the zone {zone}', { zone: extent.zone });
  if (whole) return past === 0 ? allOver : pastOutline(past);
  return centredAt(placed.centre);
}

/** The upright box round what is cut, and how many darts and joins it has. */
function sizeOf(cuts: readonly Contour[], pieces: readonly FlatPiece[]): Text {
  if (cuts.length === 0) return text('nothing is left of it');
  const { low, high } = boxRound(cuts);
  const size = longBy(high.x - low.x, high.y - low.y);
  const count = (kind: Dart['kind']): number =>
    pieces.reduce((sum, { darts }) => sum + darts.filter((dart) => dart.kind === kind).length, 0);
  const words = cutInWords(count('dart'), count('slit'));
  const cutIn = words === undefined ? size : text('{size}, {cuts}', { size, cuts: words });
  return pieces.length > 1 ? text('{cut}, in {pieces} pieces', { cut: cutIn, pieces: pieces.length }) : cutIn;
}

export function boxRound(contours: readonly Contour[]): { readonly low: Point; readonly high: Point } {
  const boxes = contours.map(boxRoundLine);
  const low = boxes.map((box) => box.low);
  const high = boxes.map((box) => box.high);
  return {
    low: { x: Math.min(...low.map(({ x }) => x)), y: Math.min(...low.map(({ y }) => y)) },
    high: { x: Math.max(...high.map(({ x }) => x)), y: Math.max(...high.map(({ y }) => y)) },
  };
}
