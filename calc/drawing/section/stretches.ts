import type { Contour } from '../../outline/contour.ts';
import { flattened } from '../../outline/flatten.ts';
import type { Stretch } from './profile.ts';

/** Chords of curves that the section line crosses, m. */
const fine = 1e-4;

/** Where the middle line (y = 0) runs inside of lines, from left to right. */
export function stretchesOf(contours: readonly Contour[]): readonly Stretch[] {
  const crossings = contours
    .flatMap((contour) => {
      const polygon = flattened(contour, fine);
      return polygon.flatMap((a, i) => {
        const b = polygon[(i + 1) % polygon.length] ?? a;
        return a.y > 0 === b.y > 0 ? [] : [a.x + ((b.x - a.x) * -a.y) / (b.y - a.y)];
      });
    })
    .sort((a, b) => a - b);
  return Array.from(
    { length: Math.floor(crossings.length / 2) },
    (_, i): Stretch => [crossings[2 * i] as number, crossings[2 * i + 1] as number],
  );
}
