import type { Text } from '../../../calc/figure/figure.ts';
import { contourArea, contourBox } from '../../../calc/outline/contour-measure.ts';
import type { DrawnCurve, ReadDrawing } from '../../../calc/read-drawing/drawn.ts';
import { isPicked, type Pick, type Picked, pickOutline } from '../../../calc/read-drawing/pick.ts';

/** A text with its figures; lengths in mm to the micrometre. */
export function said({ template, figures }: Text): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const shown = figures[name];
    if (typeof shown !== 'object') return String(shown);
    return 'si' in shown ? `${Math.round(shown.si * 1e6) / 1e3}` : said(shown);
  });
}

export function picked(drawing: ReadDrawing, pick: Pick = {}): Picked {
  const found = pickOutline(drawing, pick);
  if (!isPicked(found))
    throw new Error(`${said(found.message)}; ${drawing.problems.map((p) => said(p.message)).join('; ')}`);
  return found;
}

export function notPicked(drawing: ReadDrawing, pick: Pick = {}): string {
  const found = pickOutline(drawing, pick);
  if (isPicked(found)) throw new Error('there is an outline');
  return `${found.rule}: ${said(found.message)}`;
}

export const problemsOf = (drawing: ReadDrawing): string[] =>
  drawing.problems.map((p) => `${p.kind} ${p.at?.line ?? '-'}: ${said(p.message)}`);

/** left, low, right, high in mm, to the micrometre */
export function boxOf({ line }: DrawnCurve): number[] {
  const [low, high] = contourBox(line);
  return [low.x, low.y, high.x, high.y].map((v) => Math.round(v * 1e6) / 1e3 + 0);
}

/** mm2 */
export const areaOf = (curve: DrawnCurve): number => Math.abs(contourArea(curve.line)) * 1e6;
