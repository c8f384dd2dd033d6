/** How often a server in a worker is asked whether it is there, and how long its answer may take: ms. */
const everyMs = 5000;
const silentMs = 15_000;

/**
 * Notices that a server hangs: a worker in an endless loop tells of no error, it only answers no longer. Two answers must fail to
 * come, for a machine that slept wakes up to one that could not.
 */
export class Pulse {
  private readonly ask: () => Promise<unknown>;
  private readonly silent: () => void;
  private readonly limitMs: number;
  private readonly every: ReturnType<typeof setInterval>;
  private limit: ReturnType<typeof setTimeout> | undefined;

  constructor(ask: () => Promise<unknown>, silent: () => void, times = { everyMs, limitMs: silentMs }) {
    this.ask = ask;
    this.silent = silent;
    this.limitMs = times.limitMs;
    this.every = setInterval(() => {
      if (this.limit === undefined) this.beat(true);
    }, times.everyMs);
  }

  stop(): void {
    clearInterval(this.every);
    this.answered();
  }

  private beat(again: boolean): void {
    this.limit = setTimeout(() => {
      if (again) return this.beat(false);
      this.answered();
      this.silent();
    }, this.limitMs / 2);
    // A refusal is an answer too.
    const here = (): void => this.answered();
    this.ask().then(here, here);
  }

  private answered(): void {
    clearTimeout(this.limit);
    this.limit = undefined;
  }
}
