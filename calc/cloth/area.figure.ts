import { coreArea } from '../core/core.figure.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  known,
  quantity,
  type Reason,
  reason,
  text,
  typed,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerMaterial } from '../laminate/fraction.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { following, type Outcome } from '../outcome.ts';
import { shapeArea, shapeBounds, shapePerimeter } from '../outline/measure.ts';
import { offsetArea } from '../outline/offset.ts';
import { baseArea, inRecipe, partFrame, sidesOf } from '../outline/part.figure.ts';
import { turns } from '../outline/turns.ts';
import { AREA, LENGTH } from '../quantity/index.ts';
import { type Footprint, footprintArea, layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isCloth } from '../stack/order.ts';
import { JOIN_LAP } from './habits.ts';
import { type Lanes, lanesFor } from './lanes.ts';
import { wrapReach } from './wrap.figure.ts';

/** Net area that a layer covers in the finished part, m2; round the edge and on its landing too. */
export const layerArea = defineFigure<number>('layer_area', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), footprint: bench.ask(layerFootprint, key) }, ({ laid, footprint }) => {
    if (laid.layer.kind === 'core') return bench.ask(coreArea, key);
    if (!footprint.whole) {
      return worked(footprintArea(footprint), text('area of the shape of {name}', { name: laid.name }), {
        at: inRecipe(bench, laid.path),
      });
    }
    return whenKnown(
      { base: bench.ask(baseArea), sides: bench.ask(sidesOf), band: wrapBand(bench, laid) },
      (v, reasons) => {
        const area = following(lost(footprint), (less) => Math.max(0, v.base + v.sides.area + v.band - less));
        const words =
          v.band === 0
            ? text('the whole part')
            : text('the face and {band} round the edge', { band: quantity(v.band, AREA) });
        return worked(area, words, { reasons });
      },
    );
  }),
);

/** What a smaller or shorter copy lacks of the whole outline, m2. */
const lost = (footprint: Footprint) =>
  following(shapeArea(footprint.placed.shape), (all) => following(footprintArea(footprint), (left) => all - left));

/** Area of a wrapped ply beyond the face: the edge all round, and the ring that lands inside the outline; m2. */
function wrapBand(bench: Bench, laid: LaidLayer): Figure<number> {
  if (laid.layer.extent.kind !== 'wrap') return known(0);
  return whenKnown(
    { wrap: bench.ask(wrapReach, laid.key), frame: bench.ask(partFrame) },
    ({ wrap, frame }, reasons) => {
      const band = following(shapePerimeter(frame.shape), (perimeter) =>
        following(shapeArea(frame.shape), (all) =>
          following(
            offsetArea(frame.shape, -wrap.landing),
            (inside) => perimeter * (wrap.reach - wrap.landing) + all - inside,
          ),
        ),
      );
      return worked(band, 'way round the edge times the outline, and the ring of the landing, darts closed', {
        reasons,
      });
    },
  );
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

/** Past the finished edge, by the way that the layer ends; m. */
export function clothPastEdge(bench: Bench, laid: LaidLayer): Figure<number> {
  const { extent, oversize } = laid.layer;
  const at = inRecipe(bench, laid.path);
  if (extent.kind === 'wrap')
    return whenKnown({ wrap: bench.ask(wrapReach, laid.key) }, ({ wrap }, reasons) => known(wrap.reach, ...reasons));
  if (oversize !== undefined)
    return whenKnown(
      { oversize: typed(oversize, text('the oversize of {layer}', { layer: laid.name }), at) },
      (v, reasons) => known(v.oversize.si, ...reasons),
    );
  if (extent.kind !== 'to trim') return known(0);
  const part = bench.recipe.part;
  const allowance = typed(part?.trimAllowance, 'the trim allowance', inRecipe(bench, part?.path ?? ''));
  return whenKnown({ allowance }, (v, reasons) => known(v.allowance.si, ...reasons));
}

/** The flat piece of a layer of cloth, core or insert. */
export const layerPiece = defineFigure<Piece>('layer_piece', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), footprint: bench.ask(layerFootprint, key) }, ({ laid, footprint }) => {
    if (laid.layer.kind === 'coat')
      return typed<Piece>(
        undefined,
        text('a piece of {layer}, which is a coat,', { layer: laid.name }),
        inRecipe(bench, laid.path),
      );
    const past = isCloth(laid) ? clothPastEdge(bench, laid) : known(0);
    const sides = footprint.whole && isCloth(laid) ? bench.ask(sidesOf) : known({ area: 0, way: 0 });
    return whenKnown({ past, sides, tabs: tabsOf(bench, laid) }, (v, reasons) => {
      const out = v.past + v.sides.way;
      const piece: Outcome<Piece> = following(footprintArea(footprint, -out), (area) =>
        following(shapeBounds(footprint.placed.shape), (bounds) => {
          const grow = 2 * (out - footprint.inset);
          return {
            length: bounds.length + grow - footprint.shorter[0] - footprint.shorter[1] + v.tabs.length,
            width: bounds.width + grow,
            area: area + v.tabs.area,
            past: v.past,
            laps: 0,
          };
        }),
      );
      const fits = following(
        piece,
        (p): Outcome<Piece> =>
          p.length > 0 && p.width > 0
            ? p
            : { problem: text('nothing is left of {layer}: its drop is larger than it is', { layer: laid.name }) },
      );
      const words = text('cut {past} past the finished edge all round', { past: quantity(v.past, LENGTH) });
      return whenKnown({ flat: worked(fits, words, { at: inRecipe(bench, laid.path), reasons }) }, ({ flat }, all) =>
        joined(bench, laid, flat, all),
      );
    });
  }),
);

/** Tabs leave the piece longer at an end, over the width of the straight there; m and m2 in all. */
function tabsOf(bench: Bench, laid: LaidLayer): Figure<{ readonly length: number; readonly area: number }> {
  const tabs = laid.layer.tabs ?? [];
  if (tabs.length === 0) return known({ length: 0, area: 0 });
  return whenKnown({ frame: bench.ask(partFrame) }, ({ frame }, reasons) => {
    const ends = frame.part.ends;
    const at = inRecipe(bench, laid.path);
    const sum = { length: 0, area: 0 };
    for (const tab of tabs) {
      if (tab.end === undefined || (tab.end !== ends?.from && tab.end !== ends?.to)) {
        return typed<typeof sum>(
          undefined,
          text('the end of the part that the tab of {layer} is at', { layer: laid.name }),
          at,
        );
      }
      const x = tab.end === ends.from ? -frame.bounds.length / 2 : frame.bounds.length / 2;
      const straight = following(turns(frame.shape), (stretches) =>
        stretches
          .filter((s) => s.kind === 'straight' && Math.abs(s.from.x - x) < 1e-6 && Math.abs(s.to.x - x) < 1e-6)
          .reduce((width, s) => width + s.length, 0),
      );
      if (typeof straight !== 'number') return worked<typeof sum>(straight, '', { at });
      sum.length += tab.length.si;
      sum.area += tab.length.si * straight;
    }
    return known(
      sum,
      reason('typed', text('{length} of tabs', { length: quantity(sum.length, LENGTH) }), { at, reasons }),
    );
  });
}

/** A piece wider than its roll is joined of lanes along the roll, which lies at the angle of the ply. */
function joined(bench: Bench, laid: LaidLayer, piece: Piece, reasons: readonly Reason[]): Figure<Piece> {
  const material = bench.ask(layerMaterial, laid.key);
  const roll = 'value' in material ? material.value.roll?.value : undefined;
  if (!isCloth(laid) || roll === undefined || roll === UNKNOWN) return known(piece, ...reasons);
  const angle = laid.angle ?? 0;
  const across = Math.abs(piece.length * Math.sin(angle)) + Math.abs(piece.width * Math.cos(angle));
  const along = Math.abs(piece.length * Math.cos(angle)) + Math.abs(piece.width * Math.sin(angle));
  const narrow = Math.min(across, along);
  // cloth without direction is turned as it fits best
  const width = laid.angle === undefined ? narrow : across;
  if (width <= roll.width.si) return known(piece, ...reasons);
  const typedLap = laid.layer.lap ?? laid.layer.joins?.find((j) => j.kind === 'lap')?.lap;
  const butt = laid.layer.joins?.some((j) => j.kind === 'butt') === true;
  const lap = typedLap !== undefined ? known(typedLap.si) : butt ? known(0) : usual(bench, JOIN_LAP);
  return whenKnown({ lap }, (v, more) => {
    const made = following(lanesFor(width, roll.width.si, v.lap), (lanes) => {
      const length = laid.angle === undefined ? Math.max(across, along) : along;
      const laps = lanes.lapped * length;
      return { ...piece, lanes, laps, area: piece.area + laps };
    });
    return worked(made, text('wider than the roll of {width}: joined of lanes', { width: roll.width }), {
      at: inRecipe(bench, laid.path),
      reasons: [...reasons, ...more],
    });
  });
}

/** Cloth in the part, m2: the area covered, and the laps of joined lanes on top. */
export const layerClothArea = defineFigure<number>('layer_cloth_area', (bench, key) =>
  whenKnown({ area: bench.ask(layerArea, key), piece: bench.ask(layerPiece, key) }, ({ area, piece }, reasons) => {
    if (piece.laps === 0) return known(area, ...reasons);
    return known(
      area + piece.laps,
      reason('computed', text('with {laps} of laps', { laps: quantity(piece.laps, AREA) }), { reasons }),
    );
  }),
);
