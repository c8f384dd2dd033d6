/**
 * The only reserved words: they link what stands before with what follows, so a name spelled like one would change the
 * meaning of the line. Every other word of the notation may also be a name (a fabric may be called `core`).
 */
export const connectives: ReadonlySet<string> = new Set(
  'at by on of from to over under with in for onto as until when after within and'.split(' '),
);
