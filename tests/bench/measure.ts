/** What a benchmark file hands over, and how a time is taken. */

/** One row of `npm run bench`: a ratio (unit ''), a time, a size or a count, and what it should stay under. */
export interface Measure {
  readonly name: string;
  readonly value: number;
  readonly unit: '' | 'ms' | 'kB' | 'MB';
  readonly budget?: number;
}

/** A file `*.bench.ts` exports `measure` of this type. */
export type Bench = () => Promise<readonly Measure[]>;

const rounds = 7;

/** Shortest of 7 runs in milliseconds: the one that the machine's other work disturbed least. */
export async function shortest(run: () => unknown): Promise<number> {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const started = performance.now();
    await run();
    best = Math.min(best, performance.now() - started);
  }
  return best;
}
