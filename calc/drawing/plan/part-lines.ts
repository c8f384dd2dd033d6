import { quantity, text } from '../../figure/figure.ts';
import { type Bench, isKnown } from '../../figure/index.ts';
import { isImpossible } from '../../outcome.ts';
import { shapeBounds } from '../../outline/measure.ts';
import { cutoutsOf, type PartFrame, zonePlaced } from '../../outline/part.figure.ts';
import { origin, type Placed } from '../../outline/shape.ts';
import { LENGTH } from '../../quantity/index.ts';
import { placedContour } from './contours.ts';
import { penOf, type Thing, type Writing } from './thing.ts';
import { centredAt, longBy } from './words.ts';

/** What a shape measures along its own axes; empty where it has no sense. */
export function sizeOf({ shape }: Placed): { readonly length: number; readonly width: number } {
  const bounds = shapeBounds(shape);
  return isImpossible(bounds) ? { length: 0, width: 0 } : bounds;
}

/** Outline, ends, cutouts and zones of the part. */
export function partThings(bench: Bench, frame: PartFrame, writing: Writing): Thing[] {
  return [outlineThing(frame, writing), ...cutoutThings(bench), ...zoneThings(bench, frame, writing)];
}

function outlineThing({ shape, bounds, part }: PartFrame, { height }: Writing): Thing {
  const source = { path: `${part.path}.outline`, name: 'outline' };
  const pen = penOf('outline', source);
  const contour = placedContour({ shape, centre: origin });
  const { ends } = part;
  const upright = { anchor: 'middle', angle: Math.PI / 2 } as const;
  return {
    layer: 'outline',
    source,
    what: text('outline of the part'),
    where:
      ends === undefined
        ? text('x and y are measured from its middle')
        : text('x runs from {from} to {to}, from the middle', ends),
    size: longBy(bounds.length, bounds.width),
    items: [
      ...(contour === undefined ? [] : [pen.line(contour)]),
      ...(ends === undefined
        ? []
        : [
            pen.text({ x: bounds.low.x + 1.7 * height, y: 0 }, height, ends.from, upright),
            pen.text({ x: bounds.high.x - 0.7 * height, y: 0 }, height, ends.to, upright),
          ]),
    ],
  };
}

function cutoutThings(bench: Bench): Thing[] {
  const cutouts = bench.ask(cutoutsOf);
  if (!isKnown(cutouts)) return [];
  return cutouts.value.map((placed, i) => {
    const source = {
      path: bench.recipe.part?.cutouts[i]?.path ?? bench.recipe.part?.path ?? '',
      name: `cutout ${i + 1}`,
    };
    const contour = placedContour(placed);
    const { length, width } = sizeOf(placed);
    return {
      layer: 'outline',
      source,
      what: text('cutout {number}', { number: i + 1 }),
      where: centredAt(placed.centre),
      size: longBy(length, width),
      items: contour === undefined ? [] : [penOf('outline', source).line(contour)],
    };
  });
}

function zoneThings(bench: Bench, { part }: PartFrame, { height, say }: Writing): Thing[] {
  return part.zones.flatMap(({ name, path }) => {
    const placed = bench.ask(zonePlaced, name);
    if (!isKnown(placed)) return [];
    const source = { path, name };
    const contour = placedContour(placed.value);
    if (contour === undefined) return [];
    const pen = penOf('zone', source);
    const { length, width } = sizeOf(placed.value);
    const { x, y } = placed.value.centre;
    return [
      {
        layer: 'zone',
        source,
        what: text('zone {name}', { name }),
        where: centredAt(placed.value.centre),
        size: longBy(length, width),
        items: [
          pen.line(contour, { dashed: true }),
          pen.text({ x, y: y + width / 2 + height * 0.6 }, height, say(text('zone {name}', { name })), {
            anchor: 'middle',
          }),
        ],
      },
    ];
  });
}

/** How far it is, for words that are drawn. */
export const lengthOf = (metres: number) => quantity(metres, LENGTH);
