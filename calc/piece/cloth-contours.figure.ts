import { clothPastEdge } from '../cloth/past-edge.figure.ts';
import { defineFigure, isKnown, known, missing, quantity, reasonsOf, text, worked } from '../figure/index.ts';
import { following } from '../outcome.ts';
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

export const clothContours = defineFigure<ClothContours>('cloth_contours', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  const shape = bench.ask(layerFootprint, key);
  if (!isKnown(laid) || !isKnown(shape)) return missing(laid, shape);
  const footprint = shape.value;
  const { name, path } = laid.value;
  const sides = footprint.whole ? bench.ask(sidesOf) : noSides;
  const past = clothPastEdge(bench, laid.value);
  if (!isKnown(past) || !isKnown(sides)) return missing(past, sides);
  const out = past.value + sides.value.way;
  const { placed, inset, shorter, stretch } = footprint;
  const found = following(grownContours({ placed, out: out - inset, shorter, stretch }), (flats) =>
    flats.length > 0
      ? { flats, footprint, out }
      : { problem: text('nothing is left of {layer}: its drop is larger than it is', { layer: name }) },
  );
  const words = text('cut {out} past the finished edge all round', { out: quantity(out, LENGTH) });
  return worked<ClothContours>(found, words, { at: inRecipe(bench, path), reasons: reasonsOf(past, sides) });
});

const noSides = known({ area: 0, way: 0 });

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
