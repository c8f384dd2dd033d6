import { createInterface, type Interface } from 'node:readline';

/** Questions to whoever sits at the terminal, or lines from a pipe; opened at the first question. */
export class Prompt {
  private lines: Interface | undefined;
  private readonly waiting: ((line: string | undefined) => void)[] = [];
  private readonly read: string[] = [];
  private ended = false;
  private readonly stop = (): void => this.end();

  ask(words: string): Promise<string | undefined> {
    this.open();
    process.stdout.write(words);
    const line = this.read.shift();
    if (line !== undefined || this.ended) return Promise.resolve(line);
    return new Promise((resolve) => this.waiting.push(resolve));
  }

  private end(): void {
    this.ended = true;
    for (const next of this.waiting.splice(0)) next(undefined);
  }

  close(): void {
    process.off('SIGINT', this.stop);
    this.lines?.close();
  }

  private open(): void {
    if (this.lines !== undefined) return;
    this.lines = createInterface({ input: process.stdin });
    this.lines.on('line', (line) => {
      const next = this.waiting.shift();
      if (next === undefined) this.read.push(line);
      else next(line);
    });
    this.lines.on('close', () => this.end());
    // who stops with Ctrl-C is told where to go on, as at the end of the lines; a second one stops at once
    process.once('SIGINT', this.stop);
  }
}
