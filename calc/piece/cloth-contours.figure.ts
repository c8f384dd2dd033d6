import { clothPastEdge } from '../cloth/area.figure.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  known,
  quantity,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { following, type Outcome } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { inRecipe, partFrame, sidesOf } from '../outline/part.figure.ts';
import type { Point } from '../outline/shape.ts';
import { LENGTH } from '../quantity/index.ts';
import { type Footprint, layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { type Flat, grownContours } from './footprint-contour.ts';
import { notchClear, notchesOf } from './notches.ts';
import { placeNear, rimOf } from './rim.ts';
import type { Blocked } from './spread.ts';
import { type Tab, withTabs } from './tabs.ts';

/** A piece of cloth before darts are cut and before it is parted in lanes; several where its shape falls apart. */
export interface ClothContours {
  readonly flats: readonly Flat[];
  readonly footprint: Footprint;
  /** m past the finished edge, up the sides too */
  readonly out: number;
  /** where tabs stand, from base to base */
  readonly tabs: readonly { readonly from: Point; readonly to: Point }[];
}

export const clothContours = defineFigure<ClothContours>('cloth_contours', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), footprint: bench.ask(layerFootprint, key) }, ({ laid, footprint }) => {
    const sides = footprint.whole ? bench.ask(sidesOf) : known({ area: 0, way: 0 });
    return whenKnown({ past: clothPastEdge(bench, laid), sides, tabs: tabsOf(bench, laid) }, (v, reasons) => {
      const out = v.past + v.sides.way;
      const grown = { placed: footprint.placed, out: out - footprint.inset, shorter: footprint.shorter };
      const found = following(grownContours(grown), (flats): Outcome<ClothContours> => {
        const [first, ...rest] = flats;
        if (first === undefined)
          return { problem: text('nothing is left of {layer}: its drop is larger than it is', { layer: laid.name }) };
        const tabbed = withTabs(first.outer, v.tabs);
        return { flats: [{ ...first, outer: tabbed.contour }, ...rest], footprint, out, tabs: tabbed.spans };
      });
      const words = text('cut {out} past the finished edge all round', { out: quantity(out, LENGTH) });
      return worked(found, words, { at: inRecipe(bench, laid.path), reasons });
    });
  }),
);

function tabsOf(bench: Bench, laid: LaidLayer): Figure<readonly Tab[]> {
  const asked = laid.layer.tabs ?? [];
  if (asked.length === 0) return known([]);
  const at = inRecipe(bench, laid.path);
  return whenKnown({ frame: bench.ask(partFrame) }, ({ frame }, reasons) => {
    const { ends } = frame.part;
    const tabs: Tab[] = [];
    for (const { end, length } of asked) {
      if (end === undefined || (end !== ends?.from && end !== ends?.to)) {
        const what = text('the end of the part that the tab of {layer} is at', { layer: laid.name });
        return typed<readonly Tab[]>(undefined, what, at);
      }
      tabs.push({ end: end === ends.from ? 'low' : 'high', length: length.si });
    }
    return known(tabs, ...reasons);
  });
}

/** The notches of a piece: at the axes of the part, or of a shape that lies somewhere on it. */
export const pieceNotches = (outer: Contour, { whole, placed }: Footprint) =>
  notchesOf(outer, placed.centre, whole ? 0 : (placed.angle ?? 0));

/** Stretches of the rim in which no dart is cut: tabs and notches. */
export function blockedOn(outer: Contour, { footprint, tabs }: ClothContours): readonly Blocked[] {
  const rim = rimOf(outer);
  const spans = tabs.map(({ from, to }) => {
    const start = placeNear(rim, from).place;
    const end = placeNear(rim, to).place;
    return { from: start, to: end < start ? end + rim.length : end };
  });
  const notches = pieceNotches(outer, footprint).flatMap(({ line }) => {
    const start = line[0];
    if (start === undefined) return [];
    const { place } = placeNear(rim, start);
    return [{ from: place - notchClear, to: place + notchClear }];
  });
  return [...spans, ...notches];
}
