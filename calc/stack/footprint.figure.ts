import type { Stretch } from '../curve/surface.ts';
import { layerStretch } from '../curve/tool.figure.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  missing,
  reason,
  reasonsOf,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { contourPerimeter } from '../outline/contour-measure.ts';
import { signedDistance } from '../outline/distance.ts';
import { type Bounds, shapeArea, shapeBounds, shapePerimeter } from '../outline/measure.ts';
import { offsetArea } from '../outline/offset.ts';
import { inRecipe, partFrame, pointOnPart, shapeOnPart, zonePlaced } from '../outline/part.figure.ts';
import { intoFrame, origin, type Placed, type Point, type Shape } from '../outline/shape.ts';
import { flatArea, grownContours, placedContour } from '../piece/footprint-contour.ts';
import { laidLayer, laidStack } from './laid.figure.ts';
import type { LaidLayer } from './laid.ts';
import { wrapsRound } from './order.ts';

/** Where a layer lies on the face of the part. */
export interface Footprint {
  readonly placed: Placed;
  /** the outline of the whole part, as against a shape of its own */
  readonly whole: boolean;
  /** smaller all round by this, m; a core by its inset and by what is wrapped round it, a copy by its drop */
  readonly inset: number;
  /** cut off at the end of low x and at the other one, m */
  readonly shorter: readonly [number, number];
  /** on a curved tool: how much longer than on its face the layer is; what is cut by its own size is not */
  readonly stretch?: Stretch;
}

/** Shape and place of a layer, before anything is taken off for cutouts and inserts. */
export const layerFootprint = defineFigure<Footprint>('layer_footprint', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  const face = onFace(bench, laid.value);
  const { kind, extent } = laid.value.layer;
  if (kind === 'insert' || extent.kind === 'strip') return face;
  const stretch = bench.ask(layerStretch, key);
  if (!isKnown(face) || !isKnown(stretch)) return missing(face, stretch);
  if (stretch.value === undefined) return known(face.value);
  return knownBy({ ...face.value, stretch: stretch.value }, reasonsOf(face, stretch));
});

/** Where a layer lies on the face of the tool. */
function onFace(bench: Bench, laid: LaidLayer): Figure<Footprint> {
  const { extent } = laid.layer;
  const drop = { inset: laid.drop.around, shorter: shortened(bench, laid) };
  if (extent.kind === 'zone')
    return ifKnown(bench.ask(zonePlaced, extent.zone), (placed) => known({ placed, whole: false, ...drop }));
  if (extent.kind === 'shape') {
    const placed = shapeOnPart(bench, laid.name, extent, inRecipe(bench, laid.path));
    return ifKnown(placed, (placed) => known({ placed, whole: false, ...drop }));
  }
  if (extent.kind === 'strip') return strip(bench, laid, extent, drop);
  const inset = laid.layer.kind === 'core' ? coreInset(bench, laid) : noInset;
  const frame = bench.ask(partFrame);
  if (!isKnown(frame) || !isKnown(inset)) return missing(frame, inset);
  return known({
    placed: { shape: frame.value.shape, centre: origin },
    whole: true,
    inset: inset.value + drop.inset,
    shorter: drop.shorter,
  });
}

const noInset = known(0);

function strip(
  bench: Bench,
  laid: LaidLayer,
  extent: Extract<LaidLayer['layer']['extent'], { kind: 'strip' }>,
  drop: Pick<Footprint, 'inset' | 'shorter'>,
): Figure<Footprint> {
  const at = inRecipe(bench, laid.path);
  const sizes = {
    length: typed(extent.length, text('the length of {layer}', { layer: laid.name }), at),
    width: typed(extent.width, text('the width of {layer}', { layer: laid.name }), at),
    centre: pointOnPart(bench, extent.centre, at),
  };
  return whenKnown(sizes, (v) => {
    const shape: Shape = { kind: 'rectangle', length: v.length.si, width: v.width.si };
    const placed = following(shapeArea(shape), () => ({ shape, centre: v.centre, angle: laid.angle ?? 0 }));
    return isImpossible(placed) ? worked<Footprint>(placed, '', { at }) : known({ placed, whole: false, ...drop });
  });
}

function shortened(bench: Bench, { drop }: LaidLayer): readonly [number, number] {
  const ends = bench.recipe.part?.ends;
  return ends === undefined ? [0, 0] : [drop.ends[ends.from] ?? 0, drop.ends[ends.to] ?? 0];
}

/** The core is drawn inside the finished edge by its own inset and by every ply that is wrapped round it. */
function coreInset(bench: Bench, core: LaidLayer): Figure<number> {
  const { inset } = core.layer;
  const own =
    inset === undefined
      ? noInset
      : ifKnown(
          typed(inset, text('the inset of {core}', { core: core.name }), inRecipe(bench, core.path)),
          (inset, reasons) => knownBy(inset.si, reasons),
        );
  return whenKnown({ own, stack: bench.ask(laidStack) }, (v, reasons) =>
    ifKnown(
      allKnown(wrapsRound(v.stack.layers, core).map((ply) => bench.ask(layerThickness, ply.key))),
      (round, more) => known(v.own + round.reduce((sum, t) => sum + t, 0), ...reasons, ...more),
    ),
  );
}

/** Area inside a footprint, rolled out flat and drawn in by `further` (m); m2. */
export function footprintArea({ placed, inset, shorter, stretch }: Footprint, further = 0): Outcome {
  const out = -inset - further;
  if (shorter[0] === 0 && shorter[1] === 0 && stretch === undefined) return offsetArea(placed.shape, out);
  return following(grownContours({ placed, out, shorter, stretch }), flatArea);
}

/** The way round a footprint where nothing is drawn in or cut off, m. */
export const footprintPerimeter = ({ placed, stretch }: Footprint): Outcome =>
  stretch === undefined ? shapePerimeter(placed.shape) : following(placedContour(placed, stretch), contourPerimeter);

/** Length and width of the upright box round it in its own frame, m. */
export const footprintBox = ({
  placed: { shape, angle = 0 },
  stretch,
}: Footprint): Outcome<Pick<Bounds, 'length' | 'width'>> =>
  following(shapeBounds(shape), ({ length, width }) => {
    if (stretch === undefined) return { length, width };
    const grown = (way: number) => Math.hypot(stretch.along * Math.cos(way), stretch.across * Math.sin(way));
    return { length: length * grown(angle), width: width * grown(angle + Math.PI / 2) };
  });

/** How much larger than on the tool face areas of a layer are. */
export const grownBy = ({ stretch }: Footprint): number => (stretch === undefined ? 1 : stretch.along * stretch.across);

/** Whether a point of the part (m) lies in a footprint. */
export function covers({ placed, inset, shorter }: Footprint, point: Point): Outcome<boolean> {
  const own = intoFrame(placed, point);
  return following(signedDistance(placed.shape, own), (distance) =>
    following(
      shapeBounds(placed.shape),
      ({ low, high }) =>
        distance <= 1e-9 - inset && own.x >= low.x + shorter[0] - 1e-9 && own.x <= high.x - shorter[1] + 1e-9,
    ),
  );
}

/** A place that an `expect` or a step speaks of: the middle, a point, the middle of a zone or of a layer. */
export function placeOf(bench: Bench, at: 'middle' | string | Point): Figure<Point> {
  if (typeof at !== 'string') return known(at);
  if (at === 'middle') return known(origin);
  if (bench.recipe.part?.zones.some((zone) => zone.name === at)) {
    return ifKnown(bench.ask(zonePlaced, at), (zone) => known(zone.centre));
  }
  const stack = bench.ask(laidStack);
  return ifKnown(stack, (stack) => {
    const laid = stack.layers.find((layer) => layer.name === at);
    if (laid !== undefined)
      return ifKnown(bench.ask(layerFootprint, laid.key), (footprint) => known(footprint.placed.centre));
    return cannot(
      reason('typed', text('no zone and no layer is called {name}', { name: at }), { at: inRecipe(bench, '') }),
    );
  });
}
