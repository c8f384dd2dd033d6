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

const busy = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/**
 * Starts a watch that tells the milliseconds since: by the clock, or by the processor where that is less, as on a machine that
 * is busy with other work. What other processes do does not count by the processor: measure them with `shortest`.
 */
export function watch(): () => number {
  const [started, worked] = [performance.now(), busy()];
  return () => Math.min(performance.now() - started, busy() - worked);
}

/** What a run takes, by such a watch. */
export async function taken(run: () => unknown): Promise<number> {
  const since = watch();
  await run();
  return since();
}

/** Shortest of 7 runs in milliseconds by the clock: the one that the machine's other work disturbed least. */
export async function shortest(run: () => unknown): Promise<number> {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const started = performance.now();
    await run();
    best = Math.min(best, performance.now() - started);
  }
  return best;
}
