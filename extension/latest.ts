/**
 * Runs one piece of work at a time, for the newest request alone: what was asked for while it ran is done once, afterwards, so
 * that the last request is never lost and none is queued.
 */
export class Latest {
  private readonly work: () => Promise<void>;
  private readonly pauseMs: number;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running = false;
  private wanted = false;
  private ended = false;

  /** `pauseMs`: requests that come closer than this are one */
  constructor(work: () => Promise<void>, pauseMs: number) {
    this.work = work;
    this.pauseMs = pauseMs;
  }

  request(): void {
    this.wanted = true;
    if (this.running || this.ended) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.run(), this.pauseMs);
  }

  dispose(): void {
    this.ended = true;
    clearTimeout(this.timer);
  }

  private async run(): Promise<void> {
    this.running = true;
    this.wanted = false;
    try {
      await this.work();
    } finally {
      this.running = false;
      if (this.wanted) this.request();
    }
  }
}
