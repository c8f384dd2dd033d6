import { type Text, text } from '../../../calc/figure/index.ts';
import { contourBox } from '../../../calc/outline/contour-measure.ts';
import { isTaken, takenFrom } from '../../../calc/outline/drawn.figure.ts';
import type { DrawingUnit } from '../../../calc/read-drawing/drawn.ts';
import { drawingOf, typedShapes } from '../kit/outlines.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

type Words = (figures: { readonly file: string; readonly unit: string; readonly size: Text }) => Text;

/** What may be wrong about a unit, with the size that comes of it. */
const words: Readonly<Record<NonNullable<DrawingUnit['unclear']>, Words>> = {
  'not said': (v) => text('{file} does not say its unit; taken as {unit} the shape is {size}', v),
  pixels: (v) => text('{file} is drawn in {unit}; at 96 to the inch the shape is {size}', v),
  'says inches elsewhere': (v) =>
    text('{file} names no unit and is set to inches elsewhere; taken as {unit} the shape is {size}', v),
  'says millimetres elsewhere': (v) =>
    text('{file} is in {unit}, but set to millimetres elsewhere; taken as {unit} the shape is {size}', v),
};

export const outlineFileUnitsUnclear = rule({
  name: 'outline/file-units-unclear',
  severity: 'warning',
  title: 'an outline file does not say its unit, or says two',
  on: 'recipe',
  check(context) {
    for (const { at, shape } of typedShapes(context)) {
      const drawing = drawingOf(context.bench, shape);
      if (shape.kind !== 'file' || drawing?.unit.unclear === undefined) continue;
      const taken = takenFrom(drawing, shape);
      if (!isTaken(taken)) continue;
      const [low, high] = contourBox(taken.picked.contour);
      const size = text('{length} by {width}', { length: metres(high.x - low.x), width: metres(high.y - low.y) });
      const { name, unclear } = drawing.unit;
      context.report({ at, message: words[unclear]({ file: shape.file, unit: name, size }) });
    }
  },
});
