import { layerPiece } from '../../cloth/area.figure.ts';
import { type WrapReach, wrapReach } from '../../cloth/wrap.figure.ts';
import { chamferRun } from '../../core/solid.ts';
import { quantity, type Text, text } from '../../figure/figure.ts';
import { type Bench, isKnown } from '../../figure/index.ts';
import { layerThickness } from '../../laminate/thickness.figure.ts';
import { isImpossible } from '../../outcome.ts';
import type { Contour } from '../../outline/contour.ts';
import { contourBox } from '../../outline/contour-measure.ts';
import type { Point } from '../../outline/shape.ts';
import { LENGTH } from '../../quantity/index.ts';
import { type Footprint, layerFootprint } from '../../stack/footprint.figure.ts';
import { laidStack } from '../../stack/laid.figure.ts';
import type { LaidLayer } from '../../stack/laid.ts';
import { isCloth } from '../../stack/order.ts';
import type { DrawingLayer, DrawnItem } from '../drawing.ts';
import { footprintContours } from './contours.ts';
import { type Pen, penOf, type Thing, type Writing } from './thing.ts';
import { allOver, centredAt, layerWords, longBy, pastOutline, tagOf } from './words.ts';

const layerOf = ({ layer: { kind } }: LaidLayer): DrawingLayer =>
  kind === 'core' ? 'core' : kind === 'insert' ? 'insert' : 'cloth';

/** Every layer of the stack from the tool side, each where it lies on the part; a coat has nothing but its row. */
export function layerThings(bench: Bench, writing: Writing): Thing[] {
  const stack = bench.ask(laidStack);
  return isKnown(stack) ? stack.value.layers.map((laid) => layerThing(bench, laid, writing)) : [];
}

function layerThing(bench: Bench, laid: LaidLayer, writing: Writing): Thing {
  const layer = layerOf(laid);
  const source = { path: laid.path, name: laid.name };
  const footprint = bench.ask(layerFootprint, laid.key);
  const base = {
    layer,
    source,
    what: text('{name}: {what}', { name: laid.name, what: layerWords(laid) }),
    ...(isCloth(laid) && laid.angle !== undefined ? { hatch: laid.angle } : {}),
  };
  if (laid.layer.kind === 'coat') return { ...base, where: allOver, size: text('a coat'), items: [] };
  if (!isKnown(footprint)) return { ...base, where: text('cannot tell'), size: text('cannot tell'), items: [] };
  const wrap = laid.layer.extent.kind === 'wrap' ? bench.ask(wrapReach, laid.key) : undefined;
  const wrapped = wrap !== undefined && isKnown(wrap) ? wrap.value : undefined;
  const past = pastOf(bench, laid);
  const contours = footprintContours(footprint.value, past);
  const pen = penOf(layer, source);
  const hatch = !footprint.value.whole && base.hatch !== undefined ? { hatch: base.hatch } : {};
  return {
    ...base,
    where: whereOf(laid, footprint.value, past, wrapped),
    size: sizeOf(contours),
    ...(footprint.value.whole && past !== 0 ? { tag: tagOf(laid.name, past) } : {}),
    items: [
      // what reaches past the edge is folded up over it: the face stays where it is
      ...contours.map((contour) => pen.line(contour, { ...hatch, ...(wrapped === undefined ? {} : { dashed: true }) })),
      ...landing(footprint.value, wrapped, pen),
      ...chamfer(bench, laid, footprint.value, pen),
      ...label(laid, footprint.value, contours, pen, writing),
    ],
  };
}

/** How far the layer runs past its footprint, m. */
function pastOf(bench: Bench, laid: LaidLayer): number {
  if (!isCloth(laid)) return 0;
  const piece = bench.ask(layerPiece, laid.key);
  return isKnown(piece) ? piece.value.past : 0;
}

/** How far in a wrapped ply lands on the face. */
function landing(footprint: Footprint, wrap: WrapReach | undefined, pen: Pen): DrawnItem[] {
  if (wrap === undefined || wrap.landing <= 0) return [];
  return footprintContours(footprint, -wrap.landing).map((line) => pen.line(line, { dashed: true }));
}

/** The upper end of a core's sloped edge. */
function chamfer(bench: Bench, laid: LaidLayer, footprint: Footprint, pen: Pen): DrawnItem[] {
  const { chamfer: angle } = laid.layer;
  const thick = bench.ask(layerThickness, laid.key);
  if (angle === undefined || !isKnown(thick)) return [];
  const run = chamferRun(angle.si, thick.value);
  if (isImpossible(run) || run === 0) return [];
  return footprintContours(footprint, -run).map((line) => pen.line(line));
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
  const [low, high] = contourBox(line);
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

/** The upright box round what is drawn of it. */
function sizeOf(contours: readonly Contour[]): Text {
  if (contours.length === 0) return text('nothing is left of it');
  const { low, high } = boxRound(contours);
  return longBy(high.x - low.x, high.y - low.y);
}

export function boxRound(contours: readonly Contour[]): { readonly low: Point; readonly high: Point } {
  const boxes = contours.map(contourBox);
  const low = boxes.map(([corner]) => corner);
  const high = boxes.map(([, corner]) => corner);
  return {
    low: { x: Math.min(...low.map(({ x }) => x)), y: Math.min(...low.map(({ y }) => y)) },
    high: { x: Math.max(...high.map(({ x }) => x)), y: Math.max(...high.map(({ y }) => y)) },
  };
}
