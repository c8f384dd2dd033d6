/** `0 LINE 8 Cut 10 5` as a file writes it: each number and value on a line of its own. */
export const pairs = (...words: readonly (string | number)[]): string => words.map((w) => `${w}\r\n`).join('');

export const header = (...variables: readonly (string | number)[]) =>
  pairs(0, 'SECTION', 2, 'HEADER', ...variables, 0, 'ENDSEC');
export const mm = header(9, '$ACADVER', 1, 'AC1009', 9, '$INSUNITS', 70, 4, 9, '$MEASUREMENT', 70, 1);
export const entities = (...words: readonly (string | number)[]) =>
  pairs(0, 'SECTION', 2, 'ENTITIES', ...words, 0, 'ENDSEC', 0, 'EOF');
export const blocks = (...words: readonly (string | number)[]) =>
  pairs(0, 'SECTION', 2, 'BLOCKS', ...words, 0, 'ENDSEC');
export const line = (x1: number, y1: number, x2: number, y2: number, layer = 'Cut') =>
  [0, 'LINE', 8, layer, 10, x1, 20, y1, 30, 0, 11, x2, 21, y2, 31, 0] as const;

const quarter = Math.tan(Math.PI / 8);
/** A sled of 1180 by 420 with corners of 140, as a light polyline with bulges. */
export const sled = [
  [0, 'LWPOLYLINE', 5, '2F', 8, 'Cut', 90, 8, 70, 1],
  [10, 140, 20, 0, 10, 1040, 20, 0, 42, quarter],
  [10, 1180, 20, 140, 10, 1180, 20, 280, 42, quarter],
  [10, 1040, 20, 420, 10, 140, 20, 420, 42, quarter],
  [10, 0, 20, 280, 10, 0, 20, 140, 42, quarter],
].flat();
export const sledArea = 1180 * 420 - (4 - Math.PI) * 140 ** 2;
