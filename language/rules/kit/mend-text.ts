import type { Words } from '../../../calc/figure/figure.ts';
import type { Fix } from '../../lower/index.ts';
import type { Context } from '../rule.ts';

/** Replaces the first match of a pattern inside the line or the clause of a path. Undefined where it does not stand there. */
export function mendText(
  context: Context,
  title: Words,
  path: string,
  wrong: RegExp | string,
  right: string,
): Fix | undefined {
  const span = context.edit.span(path);
  if (span === undefined) return undefined;
  const line = context.edit.text.slice(span.offset, span.end);
  const at = typeof wrong === 'string' ? line.indexOf(wrong) : line.search(wrong);
  if (at < 0) return undefined;
  const length = typeof wrong === 'string' ? wrong.length : (wrong.exec(line)?.[0].length ?? 0);
  const offset = span.offset + at;
  return { title, edits: [{ offset, end: offset + length, text: right }] };
}

/** A number with its unit, as it is typed. */
export const TYPED_TIME = /\d+(?:\.\d+)?\s*(?:s|min|h|days?|weeks?|months?)\b/;
export const TYPED_TEMPERATURE = /-?\d+(?:\.\d+)?\s*(?:degC|°C|degF)(?!\w)/;
export const TYPED_SHARE = /\d+(?:\.\d+)?\s*%/;
export const TYPED_LENGTH = /\d+(?:\.\d+)?\s*(?:um|µm|mm|cm|m|mil|thou|in|ft)\b/;
export const TYPED_AREAL_WEIGHT = /\d+(?:\.\d+)?\s*(?:g\/m2|kg\/m2|gsm|oz\/yd2|oz\/ft2)(?!\w)/;
export const TYPED_PRESSURE = /\d+(?:\.\d+)?\s*(?:mbar|bar|Pa|kPa|torr|inHg|psi)\b/;
export const TYPED_RAMP = /\d+(?:\.\d+)?\s*(?:K|degC|degF)\/(?:min|h)\b/;
