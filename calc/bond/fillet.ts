import { text } from '../figure/figure.ts';
import { demand, given, type Outcome, positive } from '../outcome.ts';

/**
 * Section of a fillet between two faces, m2. `radius` (m) is that of its hollow face, which runs out tangent to both faces;
 * `angle` (rad) lies between them. By plane geometry: the kite from the corner to the two points of tangency, less the
 * sector of the circle, r^2 (cot(a / 2) - (pi - a) / 2); at a right angle r^2 (1 - pi / 4).
 */
export function filletSection(radius: number, angle: number): Outcome {
  return given(
    [
      positive('the radius of a fillet', radius),
      demand(
        angle > 0 && angle < Math.PI,
        text('faces that a fillet lies between meet at more than 0 and less than 180 deg', {}),
      ),
    ],
    () => radius * radius * (1 / Math.tan(angle / 2) - (Math.PI - angle) / 2),
  );
}
