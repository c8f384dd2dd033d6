import { type Bench, type Text, text } from '../../../calc/figure/index.ts';
import type { Outline } from '../../../calc/model/index.ts';
import { isTaken, takenFrom } from '../../../calc/outline/drawn.figure.ts';
import type { ReadDrawing } from '../../../calc/read-drawing/drawn.ts';
import { readPathOutline } from '../../../calc/read-drawing/path-outline.ts';
import { isPicked, type PickFault } from '../../../calc/read-drawing/pick.ts';
import type { RecipeContext } from '../rule.ts';
import { layerLines } from './uses.ts';

/** A shape as it is typed: the outline, a cutout or a zone of the part, a patch, a core or an insert with a shape of its own. */
export interface TypedShape {
  readonly at: string;
  readonly shape: Outline;
}

export function typedShapes({ recipe }: Pick<RecipeContext, 'recipe'>): readonly TypedShape[] {
  const { part } = recipe;
  const all: TypedShape[] = [];
  const add = (at: string, shape: Outline | undefined): void => {
    if (shape !== undefined) all.push({ at, shape });
  };
  if (part !== undefined) {
    add(`${part.path}.outline`, part.outline);
    for (const { path, shape } of part.cutouts) add(path, shape);
    for (const { path, shape } of part.zones) add(path, shape);
  }
  for (const { path, extent } of layerLines(recipe)) if (extent.kind === 'shape') add(path, extent.shape);
  return all;
}

/** The drawing that a shape is from, where it was read. */
export function drawingOf(bench: Bench, shape: Outline): ReadDrawing | undefined {
  const file = shape.kind === 'file' && shape.address !== undefined ? bench.drawing(shape.address) : undefined;
  return file !== undefined && 'drawing' in file ? file.drawing : undefined;
}

const ofPaths = new WeakMap<Outline, PickFault | 'none'>();

/** Why a drawn shape is no outline; the rule that says so is named. */
function drawnFault(bench: Bench, shape: Outline): PickFault | undefined {
  if (shape.kind === 'path') {
    let fault = ofPaths.get(shape);
    if (fault === undefined) {
      const found = readPathOutline(shape.data);
      fault = isPicked(found) ? 'none' : found;
      ofPaths.set(shape, fault);
    }
    return fault === 'none' ? undefined : fault;
  }
  if (shape.kind !== 'file' || shape.address === undefined) return undefined;
  const file = bench.drawing(shape.address);
  if (file === undefined) return undefined;
  const inFile = (message: Text) => text('{file}: {what}', { file: shape.file, what: message });
  if ('missing' in file) return { rule: 'file-missing', message: inFile(file.missing) };
  const refused = file.drawing.problems.find((problem) => problem.kind === 'refused');
  if (refused !== undefined)
    return { rule: 'file-missing', message: inFile(atLine(refused.message, refused.at?.line)) };
  const taken = takenFrom(file.drawing, shape);
  return isTaken(taken) ? undefined : { ...taken, message: inFile(taken.message) };
}

/** A problem of a drawing with its line there. */
export const atLine = (message: Text, line: number | undefined): Text =>
  line === undefined ? message : text('{what} (line {line})', { what: message, line });

/** Reports what one rule has to say of all drawn shapes. */
export function reportDrawn(context: RecipeContext, rule: PickFault['rule']): void {
  for (const { at, shape } of typedShapes(context)) {
    const fault = drawnFault(context.bench, shape);
    if (fault?.rule === rule) context.report({ at, message: fault.message });
  }
}
