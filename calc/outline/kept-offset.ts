import { keptWith } from '../kept.ts';
import type { Outcome } from '../outcome.ts';
import type { Contour } from './contour.ts';
import { offsetContour } from './contour-offset.ts';

const offsets = keptWith<Contour, Outcome<readonly Contour[]>>();

/** Offsets of a contour are asked for by every ply with the same reach, and again with each edit: they are kept with it. */
export const keptOffset = (contour: Contour, by: number): Outcome<readonly Contour[]> =>
  offsets(contour, String(by), () => offsetContour(contour, by));
