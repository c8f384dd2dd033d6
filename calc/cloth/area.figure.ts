import { coreArea } from '../core/core.figure.ts';
import { cutStretch } from '../curve/core-bend.figure.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  missing,
  quantity,
  type Reason,
  reason,
  reasonsOf,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { areaOf } from '../outline/contour-offset.ts';
import { baseArea, inRecipe, sidesOf } from '../outline/part.figure.ts';
import { clothContours } from '../piece/cloth-contours.figure.ts';
import { flatArea } from '../piece/footprint-contour.ts';
import { layerJoins, rollWidth } from '../piece/joins.figure.ts';
import { lanesOf } from '../piece/lanes.ts';
import { tabbedContours } from '../piece/tabbed.figure.ts';
import { AREA, LENGTH } from '../quantity/index.ts';
import {
  type Footprint,
  footprintArea,
  footprintBox,
  footprintPerimeter,
  grownBy,
  layerFootprint,
} from '../stack/footprint.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isCloth } from '../stack/order.ts';
import type { Lanes } from './lanes.ts';
import { clothPastEdge } from './past-edge.figure.ts';
import { wrapReach } from './wrap.figure.ts';

/** Net area that a layer covers in the finished part, m2; round the edge and on its landing too. */
export const layerArea = defineFigure<number>('layer_area', (bench, key) => {
  const found = bench.ask(laidLayer, key);
  const footprint = bench.ask(layerFootprint, key);
  if (!isKnown(found) || !isKnown(footprint)) return missing(found, footprint);
  const laid = found.value;
  if (laid.layer.kind === 'core') return bench.ask(coreArea, key);
  if (footprint.value.whole) return areaOnWhole(bench, laid, footprint.value, reasonsOf(found, footprint));
  return worked(footprintArea(footprint.value), text('area of the shape of {name}', { name: laid.name }), {
    at: inRecipe(bench, laid.path),
    reasons: reasonsOf(found, footprint),
  });
});

/** Of a layer that covers the part: its face, its sides and what is wrapped round its edge. */
function areaOnWhole(bench: Bench, laid: LaidLayer, footprint: Footprint, curved: readonly Reason[]): Figure<number> {
  const base = bench.ask(baseArea);
  const sides = bench.ask(sidesOf);
  const band = wrapBand(bench, laid, footprint);
  if (!isKnown(base) || !isKnown(sides) || !isKnown(band)) return missing(base, sides, band);
  const area = following(lost(footprint), (less) =>
    Math.max(0, base.value * grownBy(footprint) + sides.value.area + band.value - less),
  );
  const words =
    band.value === 0
      ? text('the whole part')
      : text('the face and {band} round the edge', { band: quantity(band.value, AREA) });
  return worked(area, words, { reasons: [...curved, ...reasonsOf(base, sides, band)] });
}

/** What a smaller or shorter copy lacks of the whole outline, m2. */
function lost(footprint: Footprint): Outcome {
  const left = footprintArea(footprint);
  const { inset, shorter } = footprint;
  if (inset === 0 && shorter[0] === 0 && shorter[1] === 0) return following(left, () => 0);
  return following(footprintArea({ ...footprint, inset: 0, shorter: [0, 0] }), (all) =>
    following(left, (left) => all - left),
  );
}

/** Area of a wrapped ply beyond the face: the edge all round, and the ring that lands inside the outline; m2. */
function wrapBand(bench: Bench, laid: LaidLayer, footprint: Footprint): Figure<number> {
  if (laid.layer.extent.kind !== 'wrap') return nothing;
  return ifKnown(bench.ask(wrapReach, laid.key), (wrap, reasons) => {
    const whole = { ...footprint, inset: 0, shorter: [0, 0] as const };
    const band = following(footprintPerimeter(whole), (perimeter) =>
      following(footprintArea(whole), (all) =>
        following(
          footprintArea(whole, wrap.landing),
          (inside) => perimeter * (wrap.reach - wrap.landing) + all - inside,
        ),
      ),
    );
    return worked(band, 'way round the edge times the outline, and the ring of the landing, darts closed', {
      reasons,
    });
  });
}

/** A flat piece as it is cut. */
export interface Piece {
  /** m along x of the part */
  readonly length: number;
  /** m along y */
  readonly width: number;
  /** m2, darts not taken off */
  readonly area: number;
  /** how far it runs past the finished edge, m */
  readonly past: number;
  /** cloth that lies double in laps of joined lanes, m2; part of the area */
  readonly laps: number;
  /** lanes side by side where the roll is narrower than the piece */
  readonly lanes?: Lanes;
}

/** A core is cut by what keeps its length as it is bent. */
function pieceFootprint(bench: Bench, key: string): Figure<Footprint> {
  const footprint = bench.ask(layerFootprint, key);
  const stretch = bench.ask(cutStretch, key);
  if (!isKnown(footprint) || !isKnown(stretch)) return missing(footprint, stretch);
  return footprint.value.stretch === undefined || stretch.value === undefined
    ? known(footprint.value)
    : knownBy({ ...footprint.value, stretch: stretch.value }, reasonsOf(footprint, stretch));
}

/** The flat piece of a layer of cloth, core or insert. */
export const layerPiece = defineFigure<Piece>('layer_piece', (bench, key) => {
  const found = bench.ask(laidLayer, key);
  const footprint = pieceFootprint(bench, key);
  if (!isKnown(found) || !isKnown(footprint)) return missing(found, footprint);
  const laid = found.value;
  const at = inRecipe(bench, laid.path);
  if (laid.layer.kind === 'coat')
    return typed<Piece>(undefined, text('a piece of {layer}, which is a coat,', { layer: laid.name }), at);
  const past = isCloth(laid) ? clothPastEdge(bench, laid) : nothing;
  const sides = footprint.value.whole && isCloth(laid) ? bench.ask(sidesOf) : noSides;
  const tabs = tabsOf(bench, laid);
  if (!isKnown(past) || !isKnown(sides) || !isKnown(tabs)) return missing(past, sides, tabs);
  const piece = onePiece(laid, footprint.value, past.value, sides.value.way, tabs.value);
  const words = text('cut {past} past the finished edge all round', { past: quantity(past.value, LENGTH) });
  const reasons = [...reasonsOf(found, footprint), ...reasonsOf(past, sides, tabs)];
  const flat = worked(piece, words, { at, reasons });
  return isKnown(flat) ? joined(bench, laid, flat.value, flat.reasons) : flat;
});

/** A piece before it is parted in lanes, which runs up the sides and `past` the edge. */
function onePiece(laid: LaidLayer, footprint: Footprint, past: number, up: number, tabs: Tabs): Outcome<Piece> {
  const out = past + up;
  const area = footprintArea(footprint, -out);
  if (isImpossible(area)) return area;
  const box = footprintBox(footprint);
  if (isImpossible(box)) return box;
  const grow = 2 * (out - footprint.inset);
  const length = box.length + grow - footprint.shorter[0] - footprint.shorter[1] + tabs.length;
  const width = box.width + grow;
  if (length > 0 && width > 0) return { length, width, area: area + tabs.area, past, laps: 0 };
  return { problem: text('nothing is left of {layer}: its drop is larger than it is', { layer: laid.name }) };
}

/** What tabs add to a piece: m, and m2. */
interface Tabs {
  readonly length: number;
  readonly area: number;
}

const noTabs: Figure<Tabs> = known({ length: 0, area: 0 });
const noSides = known({ area: 0, way: 0 });
const nothing = known(0);

/** Tabs leave the piece longer at an end, over the width of the straight there that no dart takes; m and m2 in all. */
function tabsOf(bench: Bench, laid: LaidLayer): Figure<Tabs> {
  const tabs = laid.layer.tabs ?? [];
  if (tabs.length === 0) return noTabs;
  return whenKnown(
    { plain: bench.ask(clothContours, laid.key), tabbed: bench.ask(tabbedContours, laid.key) },
    (v, reasons) => {
      const length = tabs.reduce((sum, tab) => sum + tab.length.si, 0);
      const words = text('{length} of tabs', { length: quantity(length, LENGTH) });
      return known(
        { length, area: flatArea(v.tabbed.flats) - flatArea(v.plain.flats) },
        reason('typed', words, { at: inRecipe(bench, laid.path), reasons }),
      );
    },
  );
}

/** A piece wider than its roll is joined of lanes along the roll, which lies at the angle of the ply. */
function joined(bench: Bench, laid: LaidLayer, piece: Piece, reasons: readonly Reason[]): Figure<Piece> {
  const roll = rollWidth(bench, laid);
  const typedJoin = laid.layer.joins?.some(({ at }) => at !== undefined) === true;
  // what its box fits on is one piece: no line needs to be followed
  if (!isCloth(laid) || (!typedJoin && (roll === undefined || boxAcross(piece, laid.angle) <= roll))) {
    return knownBy(piece, reasons);
  }
  return whenKnown(
    { joins: bench.ask(layerJoins, laid.key), contours: bench.ask(tabbedContours, laid.key) },
    (v, more) => {
      if (v.joins === undefined) return knownBy(piece, reasons);
      const { way, at, lap } = v.joins;
      const lanes = v.contours.flats.flatMap(({ outer }) => lanesOf(outer, way, at, lap).flat());
      const laps = areaOf(lanes) - areaOf(v.contours.flats.map(({ outer }) => outer));
      const made = { lanes: at.length + 1, joins: at.length, lapped: at.length * lap };
      const words =
        roll === undefined
          ? text('joined of {count} pieces', { count: made.lanes })
          : text('wider than the roll of {width}: joined of lanes', { width: quantity(roll, LENGTH) });
      return known(
        { ...piece, lanes: made, laps, area: piece.area + laps },
        reason('computed', words, { at: inRecipe(bench, laid.path), reasons: [...reasons, ...more] }),
      );
    },
  );
}

/** Across the roll, of the box round a piece; cloth without direction is turned as it fits best. */
function boxAcross({ length, width }: Piece, angle: number | undefined): number {
  if (angle === undefined) return Math.min(length, width);
  return Math.abs(length * Math.sin(angle)) + Math.abs(width * Math.cos(angle));
}

/** Cloth in the part, m2: the area covered, and the laps of joined lanes on top. */
export const layerClothArea = defineFigure<number>('layer_cloth_area', (bench, key) => {
  const area = bench.ask(layerArea, key);
  const piece = bench.ask(layerPiece, key);
  if (!isKnown(area) || !isKnown(piece)) return missing(area, piece);
  const reasons = reasonsOf(area, piece);
  const { laps } = piece.value;
  if (laps === 0) return knownBy(area.value, reasons);
  const words = text('with {laps} of laps', { laps: quantity(laps, AREA) });
  return known(area.value + laps, reason('computed', words, { reasons }));
});
