import { encode } from 'uqr';
import { written } from './numbers.ts';

/** A machine-readable code (QR, ISO/IEC 18004) as rows of dark fields, four fields of quiet zone round it. Level M bears a thumb print. */
export function codeFields(text: string): readonly (readonly boolean[])[] {
  return encode(text, { ecc: 'M', border: 4 }).data;
}

/** The dark fields as one path, a field 1 unit wide, y downwards: the same in SVG and in PDF. */
export function codePath(fields: readonly (readonly boolean[])[]): string {
  return fields
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${written(x)} ${written(y)}h1v1h-1z`] : [])))
    .join('');
}

export function codeSvg(text: string): string {
  const fields = codeFields(text);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${fields.length} ${fields.length}" role="img" shape-rendering="crispEdges"><path d="${codePath(fields)}" fill="#000"/></svg>`;
}
