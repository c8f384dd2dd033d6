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
  quantity,
  reason,
  text,
  typed,
  type Words,
  whenKnown,
  worked,
} from '../figure/index.ts';
import type { Coordinate, Outline, Part, Place, PlacePoint } from '../model/index.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { AREA, LENGTH } from '../quantity/dimension.ts';
import { type TrueShape, trueShape } from './drawn.figure.ts';
import { type Bounds, centredShape, shapeArea, shapeBounds, shapePerimeter } from './measure.ts';
import { netArea } from './placed.ts';
import { origin, type Placed, type Point, type Shape } from './shape.ts';
import { type Upstand, upstandArea, wayUp } from './upstand.ts';

/** Where a line of the recipe stands. */
export const inRecipe = (bench: Bench, path: string): Place => ({ entry: bench.recipe.entry, path });

/** The outline about the part's origin, which is the centre of its bounding box. */
export interface PartFrame {
  readonly shape: Shape;
  readonly bounds: Bounds;
  readonly part: Part;
  /** of an outline from a file: where it lies in the drawing */
  readonly drawn?: TrueShape['drawn'];
}

export const partFrame = defineFigure<PartFrame>('part_frame', (bench) => {
  const part = bench.recipe.part;
  const at = inRecipe(bench, part === undefined ? '' : `${part.path}.outline`);
  return whenKnown(
    {
      part: typed(part, 'the part', inRecipe(bench, '')),
      outline: typed(part?.outline, 'the outline of the part', at),
    },
    (v) =>
      ifKnown(trueShape(bench, v.outline, at), ({ shape: drawn, ...more }, reasons) => {
        const frame = following(centredShape(drawn), (shape) =>
          following(shapeBounds(shape), (bounds) => ({ shape, bounds, part: v.part, ...more })),
        );
        return worked(frame, text('the outline, {length} long and {width} wide', sizes(frame)), { at, reasons });
      }),
  );
});

function sizes(frame: Outcome<PartFrame>): Record<string, ReturnType<typeof quantity> | string> {
  if (isImpossible(frame)) return { length: '?', width: '?' };
  return { length: quantity(frame.bounds.length, LENGTH), width: quantity(frame.bounds.width, LENGTH) };
}

/** Where a point of the text lies in the part's frame. */
export function placedPoint({ bounds, part }: PartFrame, point: PlacePoint | undefined): Outcome<Point> {
  if (point === undefined) return origin;
  return following(coordinate(point.x, bounds.length, part.ends), (x) =>
    following(coordinate(point.y, bounds.width, part.ends), (y) => ({ x, y })),
  );
}

function coordinate({ offset, from }: Coordinate, size: number, ends: Part['ends']): Outcome {
  if (from === undefined) return offset.si;
  if (from === ends?.from) return -size / 2 + offset.si;
  if (from === ends?.to) return size / 2 - offset.si;
  return { problem: text('no end of the part is called {from}', { from }) };
}

/** A point of the text; one that is not told from an end needs no outline. */
export function pointOnPart(bench: Bench, point: PlacePoint | undefined, at: Place): Figure<Point> {
  if (point === undefined) return known(origin);
  if (point.x.from === undefined && point.y.from === undefined)
    return known({ x: point.x.offset.si, y: point.y.offset.si });
  return ifKnown(bench.ask(partFrame), (frame) => worked(placedPoint(frame, point), 'place on the part', { at }));
}

/** A shape from the drawing that the outline is from lies where it is drawn; one from elsewhere in the middle of the part. */
function besideOutline(bench: Bench, { address, centre }: NonNullable<TrueShape['drawn']>): Point {
  const frame = bench.ask(partFrame);
  const outline = isKnown(frame) ? frame.value.drawn : undefined;
  if (outline?.address !== address) return origin;
  return { x: centre.x - outline.centre.x, y: centre.y - outline.centre.y };
}

/** A shape that lies somewhere on the part. */
export function shapeOnPart(
  bench: Bench,
  what: Words,
  given: { readonly shape?: Outline; readonly centre?: PlacePoint },
  at: Place,
): Figure<Placed> {
  return whenKnown(
    {
      centre: pointOnPart(bench, given.centre, at),
      shape: typed(given.shape, text('the shape of {what}', { what }), at),
    },
    (v) =>
      ifKnown(trueShape(bench, v.shape, at), ({ shape, drawn }, reasons) => {
        const centre = given.centre === undefined && drawn !== undefined ? besideOutline(bench, drawn) : v.centre;
        const placed = following(shapeArea(shape), () => ({ shape, centre }));
        return worked(placed, text('shape and place of {what}', { what }), { at, reasons });
      }),
  );
}

export const cutoutsOf = defineFigure<readonly Placed[]>('cutouts', (bench) =>
  allKnown(
    (bench.recipe.part?.cutouts ?? []).map((cutout, i) =>
      shapeOnPart(bench, text('cutout {number}', { number: i + 1 }), cutout, inRecipe(bench, cutout.path)),
    ),
  ),
);

/** A zone of the part by its name. */
export const zonePlaced = defineFigure<Placed>('zone', (bench, name) => {
  const zone = bench.recipe.part?.zones.find((z) => z.name === name);
  const at = inRecipe(bench, zone?.path ?? bench.recipe.part?.path ?? '');
  return zone === undefined
    ? cannot(reason('typed', text('no zone of the part is called {name}', { name }), { at }))
    : shapeOnPart(bench, text('the zone {name}', { name }), zone, at);
});

/** Area inside the outline less the cutouts, m2, without sides. */
export const baseArea = defineFigure<number>('base_area', (bench) =>
  whenKnown({ frame: bench.ask(partFrame), cutouts: bench.ask(cutoutsOf) }, ({ frame, cutouts }, reasons) => {
    const how =
      cutouts.length === 0
        ? text('area inside the outline')
        : cutouts.length === 1
          ? text('area inside the outline, less 1 cutout')
          : text('area inside the outline, less {count} cutouts', { count: cutouts.length });
    return worked(netArea(frame.shape, cutouts), how, { at: inRecipe(bench, frame.part.path), reasons });
  }),
);

export const outlinePerimeter = defineFigure<number>('outline_perimeter', (bench) =>
  ifKnown(bench.ask(partFrame), (frame, reasons) =>
    worked(shapePerimeter(frame.shape), 'the way round the outline', { reasons }),
  ),
);

/** Sides raised all round, if the part has any. */
export const upstandOf = defineFigure<Upstand | undefined>('upstand', (bench) => {
  const sides = bench.recipe.part?.sides;
  if (sides === undefined) return known(undefined);
  const upstand = { height: sides.height.si, draft: sides.angle?.si ?? 0, radius: sides.radius?.si ?? 0 };
  return known(
    upstand,
    reason('typed', text('sides {height} high', { height: sides.height }), {
      at: inRecipe(bench, `${bench.recipe.part?.path}.sides`),
    }),
  );
});

/** Area of the sides and the way up them; 0 for a flat part. */
export const sidesOf = defineFigure<{ readonly area: number; readonly way: number }>('sides', (bench) => {
  const upstand = bench.ask(upstandOf);
  if (isKnown(upstand) && upstand.value === undefined) return known({ area: 0, way: 0 });
  return whenKnown({ upstand, perimeter: bench.ask(outlinePerimeter) }, (v, reasons) => {
    const sides = v.upstand ?? { height: 0, draft: 0, radius: 0 };
    const found = following(wayUp(sides), (way) =>
      following(upstandArea(v.perimeter, sides), (area) => ({ area, way })),
    );
    return worked(found, 'the sides all round, up their slope and round the corner at their foot', { reasons });
  });
});

/** Area of the finished part as laminated, sides included, cutouts taken off; m2. */
export const partArea = defineFigure<number>('part_area', (bench) =>
  whenKnown({ base: bench.ask(baseArea), sides: bench.ask(sidesOf) }, ({ base, sides }, reasons) => {
    if (sides.area === 0) return knownBy(base, reasons);
    const shown = { base: quantity(base, AREA), sides: quantity(sides.area, AREA) };
    return worked(base + sides.area, text('{base} inside the outline and {sides} of sides', shown), { reasons });
  }),
);

export interface OutlineSize {
  readonly length: number;
  readonly width: number;
}

/** The upright box round the outline, m. */
export const outlineSize = defineFigure<OutlineSize>('outline_size', (bench) =>
  ifKnown(bench.ask(partFrame), (frame, reasons) =>
    knownBy({ length: frame.bounds.length, width: frame.bounds.width }, reasons),
  ),
);
