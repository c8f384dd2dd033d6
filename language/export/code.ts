import { encode } from 'uqr';
import { written } from './numbers.ts';

/** What the largest code, version 40, holds in bytes at level M (ISO/IEC 18004, table of capacities). */
const mostBytes = 2331;

/**
 * A machine-readable code (QR, ISO/IEC 18004) as rows of dark fields, four fields of quiet zone round it. Level M bears a thumb print.
 * A text of more than 2,331 bytes has none.
 */
export function codeFields(text: string): readonly (readonly boolean[])[] | undefined {
  if (new TextEncoder().encode(text).length > mostBytes) return undefined;
  return encode(text, { ecc: 'M', border: 4 }).data;
}

/** The dark fields as one path, a field 1 unit wide, y downwards: the same in SVG and in PDF. */
export function codePath(fields: readonly (readonly boolean[])[]): string {
  return fields
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${written(x)} ${written(y)}h1v1h-1z`] : [])))
    .join('');
}

export function codeSvg(text: string): string | undefined {
  const fields = codeFields(text);
  if (fields === undefined) return undefined;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${fields.length} ${fields.length}" role="img" shape-rendering="crispEdges"><path d="${codePath(fields)}" fill="#000"/></svg>`;
}
