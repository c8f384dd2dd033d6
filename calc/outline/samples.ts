import { following, given, type Outcome, positive } from '../outcome.ts';
import { pointOf, segmentLength, segmentsOf } from './arc.ts';
import { formPerimeter } from './measure.ts';
import { type PlainForm, plainForm } from './plain.ts';
import { distanceBetween, edges } from './polygon.ts';
import type { Point, Shape } from './shape.ts';

const mostSamples = 4096;

/**
 * Points on an outline, counter-clockwise, at most `step` (m) apart and with every corner among them. The step grows
 * where more than 4096 points would be needed.
 */
export function samples(shape: Shape, step: number): Outcome<readonly Point[]> {
  return given([positive('the distance between points', step)], () =>
    following(plainForm(shape), (form) => formSamples(form, Math.max(step, formPerimeter(form) / mostSamples))),
  );
}

function formSamples(form: PlainForm, step: number): Point[] {
  switch (form.kind) {
    case 'box': {
      const { length, width, corner } = form;
      const along = length / 2 - corner;
      const across = width / 2 - corner;
      const arcs = [
        [along, across],
        [-along, across],
        [-along, -across],
        [along, -across],
      ] as const;
      return straightened(
        arcs.flatMap(([x, y], i) => arc({ x, y }, corner, (i * Math.PI) / 2, step)),
        step,
      );
    }
    case 'ellipse': {
      const n = 4 * Math.max(4, Math.ceil(formPerimeter(form) / step / 4));
      const turn = (2 * Math.PI) / n;
      const points = Array.from({ length: n }, (_, i) => ({
        x: form.a * Math.cos(i * turn),
        y: form.b * Math.sin(i * turn),
      }));
      return straightened(points, step);
    }
    case 'contour':
      return segmentsOf(form.vertices).flatMap((s) => {
        const n = Math.max(s.arc === undefined ? 1 : 4, Math.ceil(segmentLength(s) / step));
        return Array.from({ length: n }, (_, i) => pointOf(s, i / n));
      });
  }
}

function arc(centre: Point, radius: number, start: number, step: number): Point[] {
  if (radius === 0) return [centre];
  const n = Math.max(4, Math.ceil((radius * Math.PI) / 2 / step));
  return Array.from({ length: n + 1 }, (_, i) => {
    const angle = start + ((i / n) * Math.PI) / 2;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/** Fills the straight gaps of a closed chain with points at most a step apart. */
function straightened(points: readonly Point[], step: number): Point[] {
  return edges(points).flatMap(([a, b]) => {
    const n = Math.max(1, Math.ceil(distanceBetween(a, b) / step));
    return Array.from({ length: n }, (_, i) => ({ x: a.x + ((b.x - a.x) * i) / n, y: a.y + ((b.y - a.y) * i) / n }));
  });
}
