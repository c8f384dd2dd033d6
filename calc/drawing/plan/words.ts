import { quantity, type Text, text } from '../../figure/figure.ts';
import type { Point } from '../../outline/shape.ts';
import { ANGLE, LENGTH } from '../../quantity/index.ts';
import type { LaidLayer } from '../../stack/laid.ts';

const length = (metres: number) => quantity(metres, LENGTH);

export const longBy = (long: number, wide: number): Text =>
  text('{length} by {width}', { length: length(long), width: length(wide) });

/** A point by its coordinates; on an axis a rounding error is no place. */
export const centredAt = ({ x, y }: Point): Text =>
  text('centred at ({x}, {y})', { x: length(near(x)), y: length(near(y)) });

const near = (metres: number): number => (Math.abs(metres) < 1e-9 ? 0 : metres);

export const allOver: Text = text('all over the part');
export const pastOutline = (past: number): Text =>
  past < 0
    ? text('{short} short of the outline', { short: length(-past) })
    : past === 0
      ? text('to the outline')
      : text('{past} past the outline', { past: length(past) });

/** A name beside a line: how far outside of the outline it runs, or inside. */
export const tagOf = (name: string, past: number): Text =>
  past < 0
    ? text('{name}, {short} in', { name, short: length(-past) })
    : text('{name}, {past} out', { name, past: length(past) });

/** `ply of triax_680 at 0 deg`; the word of the notation is not translated */
export function layerWords({ layer, angle, turnedOver }: LaidLayer): Text {
  const [kind, material] = [layer.kind, layer.material];
  const shown = { kind, material: material ?? '', angle: quantity(angle ?? 0, ANGLE) };
  if (material === undefined) return text('{kind}', shown);
  if (angle === undefined)
    return text(turnedOver ? '{kind} of {material}, turned over' : '{kind} of {material}', shown);
  return text(turnedOver ? '{kind} of {material} at {angle}, turned over' : '{kind} of {material} at {angle}', shown);
}
