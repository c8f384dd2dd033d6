import { type WrapReach, wrapReach } from '../../cloth/wrap.figure.ts';
import { chamferRun } from '../../core/solid.ts';
import { quantity, type Text, text } from '../../figure/figure.ts';
import { type Bench, isKnown } from '../../figure/index.ts';
import { layerThickness } from '../../laminate/thickness.figure.ts';
import { isImpossible } from '../../outcome.ts';
import type { Point } from '../../outline/shape.ts';
import { LENGTH } from '../../quantity/index.ts';
import { type Footprint, layerFootprint } from '../../stack/footprint.figure.ts';
import type { LaidLayer } from '../../stack/laid.ts';
import { coreOf, grooveOf, insertsOf, isCloth, wrapTarget } from '../../stack/order.ts';
import { footprintContours } from '../plan/contours.ts';
import { layerOf } from '../plan/layer-lines.ts';
import { penOf, type Thing } from '../plan/thing.ts';
import { layerWords } from '../plan/words.ts';
import { heightAt, laidOn, levelled, type Profile, type Stretch, without } from './profile.ts';
import { stretchesOf } from './stretches.ts';

/** The layers in section along the middle line, and the upper side of them all; thickness times `factor`. */
export interface LaidSection {
  readonly things: readonly Thing[];
  readonly profile: Profile;
  /** of the thinnest layer as it is drawn, m; absent where no layer has a thickness */
  readonly thinnest?: number;
}

interface Layer {
  readonly laid: LaidLayer;
  readonly thickness: number | undefined;
  readonly footprint: Footprint | undefined;
  readonly stretches: readonly Stretch[];
  /** of a wrapped ply */
  readonly wrap: WrapReach | undefined;
}

export function sectionLayers(bench: Bench, stack: readonly LaidLayer[], floor: Profile, factor: number): LaidSection {
  const layers = stack.map((laid) => layerIn(bench, laid));
  const byLaid = new Map(layers.map((layer) => [layer.laid, layer]));
  let profile = floor;
  /** the shapes of each layer: what lies on the face, and what comes round the edge after others are laid */
  const shapes = new Map<LaidLayer, (readonly Point[])[]>(stack.map((laid) => [laid, []]));
  /** what each core lies on: what lies in it adds no height, whether it is laid before the core or after it */
  const below = new Map<LaidLayer, Profile>();
  const put = (laid: LaidLayer, stretch: Stretch, thickness: number, slope = 0): void => {
    const on = laidOn(profile, stretch, thickness, slope);
    shapes.get(laid)?.push(on.shape);
    profile = on.profile;
  };
  for (const layer of layers) {
    const { laid, thickness, stretches } = layer;
    if (thickness === undefined) continue;
    const host = coreOf(stack, laid) ?? grooveOf(stack, laid);
    if (host !== undefined) {
      const floorOf = below.get(host);
      const sunk =
        floorOf !== undefined && laid.layer.kind !== 'insert' ? (byLaid.get(host)?.thickness ?? 0) - thickness : 0;
      for (const stretch of stretches) {
        const { shape } = laidOn(floorOf ?? profile, stretch, thickness);
        shapes.get(laid)?.push(shape.map(({ x, y }) => ({ x, y: y + sunk })));
      }
      continue;
    }
    if (laid.layer.kind === 'core') below.set(laid, profile);
    const inserts = insertsOf(stack, laid).flatMap((insert) => byLaid.get(insert)?.stretches ?? []);
    const slope = slopeOf(laid, thickness);
    for (const stretch of stretches) {
      const before = profile;
      const parts = inserts.length === 0 ? [stretch] : without(stretch, inserts);
      for (const part of parts) put(laid, part, thickness, parts.length === 1 ? slope : 0);
      // beside a core lie its inserts: the next layer finds one level
      if (inserts.length > 0) profile = laidOn(before, stretch, thickness).profile;
    }
    for (const ply of layers.filter((each) => each.wrap !== undefined && wrapTarget(stack, each.laid) === laid))
      profile = wrapped(ply, profile, (shape) => shapes.get(ply.laid)?.push(shape));
  }
  const things = layers.map((layer) => thingOf(layer, shapes.get(layer.laid) ?? [], factor));
  const drawn = layers.flatMap(({ thickness }) => (thickness === undefined ? [] : [thickness * factor]));
  return drawn.length === 0 ? { things, profile } : { things, profile, thinnest: Math.min(...drawn) };
}

function layerIn(bench: Bench, laid: LaidLayer): Layer {
  const thickness = bench.ask(layerThickness, laid.key);
  const footprint = bench.ask(layerFootprint, laid.key);
  const wrap = laid.layer.extent.kind === 'wrap' ? bench.ask(wrapReach, laid.key) : undefined;
  const place = isKnown(footprint) ? footprint.value : undefined;
  return {
    laid,
    thickness: isKnown(thickness) && thickness.value > 0 ? thickness.value : undefined,
    footprint: place,
    stretches: place === undefined ? [] : stretchesOf(footprintContours(place, 0)),
    wrap: wrap !== undefined && isKnown(wrap) ? wrap.value : undefined,
  };
}

function slopeOf({ layer }: LaidLayer, thickness: number): number {
  if (layer.chamfer === undefined) return 0;
  const run = chamferRun(layer.chamfer.si, thickness);
  return isImpossible(run) ? 0 : run;
}

/** A wrapped ply goes up at both ends and lands on what has been laid meanwhile. */
function wrapped(
  { thickness = 0, stretches, wrap }: Layer,
  profile: Profile,
  draw: (shape: readonly Point[]) => void,
): Profile {
  const [first, last] = [stretches[0]?.[0], stretches.at(-1)?.[1]];
  if (wrap === undefined || first === undefined || last === undefined || wrap.landing <= 0) return profile;
  const landings: readonly Stretch[] = [
    [first, first + wrap.landing],
    [last - wrap.landing, last],
  ];
  let over = profile;
  for (const [from, to] of landings) {
    const edge = from === first ? first : last;
    const inwards = edge === first ? thickness : -thickness;
    // just inside of the edge the core begins: its top is that of the face that it lands on
    const inner = edge + 1.5 * inwards;
    const bottom = thickness;
    const top = heightAt(over, inner);
    draw(box(Math.min(edge, edge + inwards), bottom, Math.max(edge, edge + inwards), top + thickness));
    const on = laidOn(levelled(over, [from, to], top), [from, to], thickness);
    draw(on.shape);
    over = on.profile;
  }
  return over;
}

const box = (left: number, low: number, right: number, high: number): readonly Point[] => [
  { x: left, y: low },
  { x: right, y: low },
  { x: right, y: high },
  { x: left, y: high },
];

function thingOf({ laid, thickness, stretches }: Layer, shapes: readonly (readonly Point[])[], factor: number): Thing {
  const layer = layerOf(laid);
  const source = { path: laid.path, name: laid.name };
  const pen = penOf(layer, source);
  const known = thickness !== undefined;
  const thick = quantity(thickness ?? 0, LENGTH);
  return {
    layer,
    source,
    what: text('{name}: {what}', { name: laid.name, what: layerWords(laid) }),
    where: whereOf(stretches),
    size: known ? text('{thick} thick', { thick }) : text('its thickness is not known'),
    ...(known && shapes.length > 0 ? { tag: text('{name}, {thick}', { name: laid.name, thick }) } : {}),
    ...(isCloth(laid) && laid.angle !== undefined ? { hatch: laid.angle } : {}),
    items: shapes.map((shape) => pen.line(shape.map(({ x, y }) => ({ x, y: y * factor })))),
  };
}

function whereOf(stretches: readonly Stretch[]): Text {
  const [first] = stretches;
  if (first === undefined) return text('beside the middle line');
  const last = stretches.at(-1) ?? first;
  return text('from {from} to {to} along the middle line', {
    from: quantity(first[0], LENGTH),
    to: quantity(last[1], LENGTH),
  });
}
