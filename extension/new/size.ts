/** Reads a finished size as people type it. */
import { sizeLimits } from './choices.ts';

/** Metres in a unit of length; the inch is exactly 25.4 mm (NIST SP 811, appendix B). */
const units: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1, in: 0.0254, '"': 0.0254 };

const typed = /^\s*(\d+(?:\.\d+)?)\s*(mm|cm|m|in|")?(?:\s*(?:by|x|×)\s*(\d+(?:\.\d+)?)\s*(mm|cm|m|in|")?)?\s*$/i;

/** `720 by 520`, `28 in by 20 in`, `600 mm`: the longer side first, metres; millimetres where no unit is said; undefined where it is no size within the limits. */
export function readSize(text: string): { readonly length: number; readonly width: number } | undefined {
  const [, one, unitOfOne, other, unitOfOther] = typed.exec(text) ?? [];
  if (one === undefined) return undefined;
  const unit = (unitOfOther ?? unitOfOne ?? 'mm').toLowerCase();
  const metres = (value: string, own: string | undefined): number =>
    Number(value) * (units[own?.toLowerCase() ?? unit] ?? 0);
  const first = metres(one, unitOfOne);
  const second = other === undefined ? first : metres(other, unitOfOther);
  const [length, width] = [Math.max(first, second), Math.min(first, second)];
  return width >= sizeLimits.least && length <= sizeLimits.most ? { length, width } : undefined;
}
