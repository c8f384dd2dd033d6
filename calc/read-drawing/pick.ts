import { type Shown, type Text, text } from '../figure/figure.ts';
import type { Contour } from '../outline/contour.ts';
import { type ContourFault, contourFault, contourFaultWords } from '../outline/contour-fault.ts';
import { contourArea, contourBox, tidiedContour } from '../outline/contour-measure.ts';
import { distanceBetween } from '../outline/polygon.ts';
import type { Point } from '../outline/shape.ts';
import { LENGTH } from '../quantity/dimension.ts';
import { siQuantity } from '../quantity/quantity.ts';
import type { DrawnCurve, ReadDrawing } from './drawn.ts';

/** Which of the curves of a drawing is meant. */
export interface Pick {
  readonly layer?: string;
  readonly id?: string;
}

/** Why no outline comes out of a drawing; the name of the rule that says so, and the place in the drawing, m, where there is one. */
export interface PickFault {
  readonly rule: 'open' | 'self-crossing' | 'degenerate' | 'file-missing';
  readonly message: Text;
  readonly at?: Point;
}

export interface Picked {
  readonly contour: Contour;
  readonly curve: DrawnCurve;
}

/** To a tenth of a micrometre: what is left of rounding is no length. */
const metres = (si: number): Shown => siQuantity(Math.round(si * 1e7) / 1e7 + 0, LENGTH);

/** A place as the drawing has it. */
const inDrawing = ({ x, y }: Point, down: boolean): Point => ({ x, y: down ? -y : y });

/** The one closed curve that is meant, fit to be an outline and counter-clockwise; or why there is none. */
export function pickOutline(drawing: ReadDrawing, pick: Pick): Picked | PickFault {
  const meant = drawing.curves.filter((curve) => matches(curve, pick));
  if (meant.length === 0) return nothingThere(drawing, pick);
  const closed = meant.filter((curve) => curve.closed);
  const down = drawing.down === true;
  if (closed.length === 0) return openCurve(meant, down);
  const [only] = closed;
  if (closed.length > 1 || only === undefined) return several(closed);
  const contour = tidiedContour(only.line);
  const fault = contourFault(contour);
  return fault === undefined ? { contour, curve: only } : unfit(fault, down);
}

export const isPicked = (found: Picked | PickFault): found is Picked => 'contour' in found;

function matches(curve: DrawnCurve, { layer, id }: Pick): boolean {
  const same = (a: string | undefined, b: string) => a?.toLowerCase() === b.toLowerCase();
  if (layer !== undefined) return same(curve.layer, layer) || curve.groups.some((name) => same(name, layer));
  if (id !== undefined) return same(curve.id, id) || curve.groups.some((name) => same(name, id));
  return curve.hidden !== true;
}

function nothingThere({ curves, layers }: ReadDrawing, { layer, id }: Pick): PickFault {
  const rule = 'file-missing';
  const visible = curves.filter((c) => c.hidden !== true);
  if (curves.length === 0) return { rule: 'degenerate', message: text('the drawing holds no curves') };
  if (layer !== undefined)
    return layers.length === 0
      ? { rule, message: text('no layer {layer} in the drawing; it has no layers', { layer }) }
      : { rule, message: text('no layer {layer} in the drawing; it has {layers}', { layer, layers: listed(layers) }) };
  const ids = [...new Set(visible.flatMap((c) => (c.id === undefined ? [] : [c.id])))];
  if (id !== undefined)
    return ids.length === 0
      ? { rule, message: text('no curve {id} in the drawing; its curves have no ids', { id }) }
      : { rule, message: text('no curve {id} in the drawing; it has {ids}', { id, ids: listed(ids) }) };
  return {
    rule,
    message: text('all curves lie on layers that are switched off: {layers}', { layers: listed(layers) }),
  };
}

/** Names as a list, no more than the reader takes in. */
const listed = (names: readonly string[]): string =>
  names.length <= mostListed ? names.join(', ') : `${names.slice(0, mostListed).join(', ')} ...`;

const mostListed = 12;

function openCurve(curves: readonly DrawnCurve[], down: boolean): PickFault {
  const reach = (c: DrawnCurve): number => {
    const [low, high] = contourBox(c.line);
    return Math.hypot(high.x - low.x, high.y - low.y);
  };
  const longest = curves.reduce((most, c) => (reach(c) > reach(most) ? c : most));
  const [start, end] = [longest.line[0], longest.line.at(-1)];
  if (start === undefined || end === undefined) return { rule: 'degenerate', message: text('the curve has no length') };
  const [from, to] = [inDrawing(start, down), inDrawing(end, down)];
  const open = metres(Math.hypot(end.x - start.x, end.y - start.y));
  return {
    rule: 'open',
    message: text('the curve is open by {open}: it begins at ({x}, {y}) and ends at ({u}, {v}) of the drawing', {
      open,
      x: metres(from.x),
      y: metres(from.y),
      u: metres(to.x),
      v: metres(to.y),
    }),
    at: to,
  };
}

function several(curves: readonly DrawnCurve[]): PickFault {
  const rule = 'file-missing';
  const layers = [...new Set(curves.flatMap((c) => (c.layer === undefined ? [] : [c.layer])))];
  const ids = curves.flatMap((c) => (c.id === undefined ? [] : [c.id]));
  const count = curves.length;
  if (layers.length > 1)
    return {
      rule,
      message: text('{count} closed curves; say which: layer {layers}', { count, layers: listed(layers) }),
    };
  if (new Set(ids).size === count)
    return { rule, message: text('{count} closed curves; say which: id {ids}', { count, ids: listed(ids) }) };
  return { rule, message: withoutNames(curves, count) };
}

/** Curves that no name tells apart are told by their sizes; two that are alike are mostly one line drawn twice. */
function withoutNames(closed: readonly DrawnCurve[], count: number): Text {
  const [first, second] = closed
    .map(({ line }) => ({ box: contourBox(line), area: Math.abs(contourArea(line)) }))
    .sort((a, b) => b.area - a.area);
  if (first === undefined || second === undefined)
    return text('{count} closed curves; put the outline on a layer of its own', { count });
  const larger = sizeOf(first.box);
  const near = first.box.every((corner, i) => distanceBetween(corner, second.box[i] ?? corner) < alike);
  if (near && first.area - second.area < alike * distanceBetween(...first.box))
    return text(
      '{count} closed curves; the two largest are alike and in one place, {larger}: a line drawn twice? Delete one, or put the outline on a layer of its own',
      { count, larger },
    );
  return text('{count} closed curves, the largest {larger} and {smaller}; put the outline on a layer of its own', {
    count,
    larger,
    smaller: sizeOf(second.box),
  });
}

const sizeOf = ([low, high]: readonly [Point, Point]): Text =>
  text('{length} by {width}', { length: metres(high.x - low.x), width: metres(high.y - low.y) });

/** What is nearer than this is the same place, drawn with another rounding, m. */
const alike = 1e-4;

const rules: Readonly<Record<ContourFault['kind'], PickFault['rule']>> = {
  'crosses itself': 'self-crossing',
  'doubles back': 'self-crossing',
  'no area': 'degenerate',
  'no number': 'degenerate',
  'too few points': 'degenerate',
  'too many points': 'degenerate',
};

/** A fault of a contour as the rule tells it, with its place. */
function unfit(fault: ContourFault, down: boolean): PickFault {
  const rule = rules[fault.kind];
  const words = contourFaultWords(fault);
  if (!('at' in fault)) return { rule, message: words };
  const at = inDrawing(fault.at, down);
  return { rule, message: text('{fault}, at ({x}, {y})', { fault: words, x: metres(at.x), y: metres(at.y) }), at };
}
