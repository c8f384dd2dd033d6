/** One line of a text, by its offsets, without its line end. */
export interface Line {
  readonly start: number;
  readonly end: number;
}

const lineEnd = /[\r\n]/;

/** A change within one line. */
export interface TypedChange {
  readonly line: Line;
  /** offset behind what was typed */
  readonly cursor: number;
}

/** The one line in which two texts differ; undefined where they differ in a line end or in more than a line. */
export function typedChange(before: string, now: string): TypedChange | undefined {
  const shorter = Math.min(before.length, now.length);
  let head = 0;
  while (head < shorter && before[head] === now[head]) head++;
  let tail = 0;
  while (tail < shorter - head && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  const cursor = now.length - tail;
  if (lineEnd.test(before.slice(head, before.length - tail)) || lineEnd.test(now.slice(head, cursor))) return undefined;
  return { line: lineAround(now, head), cursor };
}

export function lineAround(text: string, offset: number): Line {
  const start = offset === 0 ? 0 : Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const end = lineEnd.exec(text.slice(offset))?.index;
  return { start, end: end === undefined ? text.length : offset + end };
}
