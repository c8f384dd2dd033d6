import { clothPastEdge } from '../cloth/past-edge.figure.ts';
import { defineFigure, known, quantity, text, whenKnown, worked } from '../figure/index.ts';
import { following, type Outcome } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { inRecipe, sidesOf } from '../outline/part.figure.ts';
import { LENGTH } from '../quantity/index.ts';
import { type Footprint, layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import { type Flat, grownContours, movedOn } from './footprint-contour.ts';
import { notchClear, notchesOf } from './notches.ts';
import { placeNear, rimOf } from './rim.ts';
import type { Blocked } from './spread.ts';

/** A piece of cloth before darts are cut and before it is parted in lanes, without tabs; several where its shape falls apart. */
export interface ClothContours {
  readonly flats: readonly Flat[];
  readonly footprint: Footprint;
  /** m past the finished edge, up the sides too */
  readonly out: number;
}

export const clothContours = defineFigure<ClothContours>('cloth_contours', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), footprint: bench.ask(layerFootprint, key) }, ({ laid, footprint }) => {
    const sides = footprint.whole ? bench.ask(sidesOf) : known({ area: 0, way: 0 });
    return whenKnown({ past: clothPastEdge(bench, laid), sides }, (v, reasons) => {
      const out = v.past + v.sides.way;
      const { placed, shorter, stretch } = footprint;
      const grown = { placed, out: out - footprint.inset, shorter, stretch };
      const found = following(grownContours(grown), (flats): Outcome<ClothContours> => {
        if (flats.length > 0) return { flats, footprint, out };
        return { problem: text('nothing is left of {layer}: its drop is larger than it is', { layer: laid.name }) };
      });
      const words = text('cut {out} past the finished edge all round', { out: quantity(out, LENGTH) });
      return worked(found, words, { at: inRecipe(bench, laid.path), reasons });
    });
  }),
);

/** The notches of a piece: at the axes of the part, or of a shape that lies somewhere on it. */
export const pieceNotches = (outer: Contour, { whole, placed, stretch }: Footprint) =>
  notchesOf(outer, movedOn(placed, stretch).centre, whole ? 0 : (placed.angle ?? 0));

/** Stretches of the rim in which no dart is cut: those of the notches. */
export function blockedOn(outer: Contour, { footprint }: ClothContours): readonly Blocked[] {
  const rim = rimOf(outer);
  return pieceNotches(outer, footprint).flatMap(({ line }) => {
    const start = line[0];
    if (start === undefined) return [];
    const { place } = placeNear(rim, start);
    return [{ from: place - notchClear, to: place + notchClear }];
  });
}
