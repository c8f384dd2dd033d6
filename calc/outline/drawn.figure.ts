import {
  type Bench,
  cannot,
  type Figure,
  ifKnown,
  known,
  quantity,
  type Reason,
  reason,
  text,
  typed,
} from '../figure/index.ts';
import { type Outline, type Place, UNKNOWN } from '../model/index.ts';
import { LENGTH } from '../quantity/dimension.ts';
import type { ReadDrawing } from '../read-drawing/drawn.ts';
import { isPicked, type Picked, type PickFault, pickOutline } from '../read-drawing/pick.ts';
import { contourBox } from './contour-measure.ts';
import type { Point, Shape } from './shape.ts';
import { moved, transformed } from './transform.ts';

/** An outline with its true shape. */
export interface TrueShape {
  readonly shape: Shape;
  /** where a drawn shape lies in its drawing: shapes of one drawing keep their places to each other */
  readonly drawn?: { readonly address: string; readonly centre: Point };
}

interface Taken {
  readonly picked: Picked;
  readonly shape: Shape;
  readonly centre: Point;
}

const kept = new WeakMap<ReadDrawing, Map<string, Taken | PickFault>>();

/** The curve that is meant, about the middle of its bounding box; the same object for the same drawing. */
export function takenFrom(drawing: ReadDrawing, { layer, id }: Outline & { kind: 'file' }): Taken | PickFault {
  const picks = kept.get(drawing) ?? new Map<string, Taken | PickFault>();
  kept.set(drawing, picks);
  const key = `${layer === undefined ? '' : `layer ${layer}`}/${id === undefined ? '' : `id ${id}`}`;
  const before = picks.get(key);
  if (before !== undefined) return before;
  const picked = pickOutline(drawing, {
    ...(layer === undefined ? {} : { layer }),
    ...(id === undefined ? {} : { id }),
  });
  const taken = isPicked(picked) ? centred(picked) : picked;
  picks.set(key, taken);
  return taken;
}

export const isTaken = (found: Taken | PickFault): found is Taken => 'picked' in found;

function centred(picked: Picked): Taken {
  const [low, high] = contourBox(picked.contour);
  const centre = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 };
  return {
    picked,
    centre,
    shape: { kind: 'contour', vertices: transformed(picked.contour, moved(-centre.x, -centre.y)) },
  };
}

/** The true shape behind an outline; for one from a file what was found in the drawing, or what is missing there. */
export function trueShape(bench: Bench, outline: Outline, at: Place): Figure<TrueShape> {
  if (outline.kind !== 'file') return known({ shape: outline });
  const missing = (why: Reason['text']) =>
    cannot(reason('typed', text('{file}: {why}', { file: outline.file, why }), { at }));
  return ifKnown(typed(outline.address, 'the drawing of the outline', at), (address) => {
    const found = bench.drawing(address);
    if (found === undefined) return missing(text('the drawing has not been read'));
    if ('missing' in found) return missing(found.missing);
    const { drawing } = found;
    const refused = drawing.problems.find((problem) => problem.kind === 'refused');
    if (refused !== undefined) return missing(refused.message);
    const taken = takenFrom(drawing, outline);
    if (!isTaken(taken)) return missing(taken.message);
    return known(
      { shape: taken.shape, drawn: { address, centre: taken.centre } },
      ...read(outline.file, drawing, at),
      ...along(bench),
    );
  });
}

/** On a curved tool a drawing may be meant in two ways: which one is taken is said. */
function along(bench: Bench): Reason[] {
  const tool = bench.recipe.stack?.tool;
  const curve = tool === undefined ? undefined : bench.toolCurve(tool);
  if (curve === undefined || curve.value === UNKNOWN) return [];
  const words = text(
    'sizes of the drawing are measured along the curved face, as cloth lies on it; in plan they would be shorter',
  );
  return [reason('typed', words, { at: curve.at })];
}

/** What was read, for who asks where the figures come from: the unit, and what was joined. */
function read(file: string, { unit, joinedOver }: ReadDrawing, at: Place): Reason[] {
  const from = reason('typed', text('drawn in {file}, one unit of it is {unit}', { file, unit: unit.name }), { at });
  if (joinedOver < 1e-6) return [from];
  const gap = quantity(joinedOver, LENGTH);
  return [from, reason('computed', text('ends of lines up to {gap} apart were joined', { gap }), { at })];
}
