/// <reference lib="dom" />
/** The wire to a language server in a web worker: unlike a process, a worker that has died closes nothing. */
import {
  AbstractMessageReader,
  BrowserMessageWriter,
  type DataCallback,
  type Disposable,
  type MessageReader,
  type MessageWriter,
} from 'vscode-languageclient/browser';

class WorkerReader extends AbstractMessageReader {
  private readonly worker: Worker;

  constructor(worker: Worker) {
    super();
    this.worker = worker;
  }

  listen(callback: DataCallback): Disposable {
    const hear = ({ data }: MessageEvent): void => callback(data);
    this.worker.addEventListener('message', hear);
    return { dispose: () => this.worker.removeEventListener('message', hear) };
  }

  close(): void {
    this.fireClose();
  }
}

export class WorkerWire {
  readonly reader: MessageReader;
  readonly writer: MessageWriter;
  private readonly worker: Worker;
  private readonly died: (why: string) => void;
  private readonly closing: WorkerReader;
  private ended = false;

  /** `died` hears why. */
  constructor(worker: Worker, died: (why: string) => void) {
    this.worker = worker;
    this.died = died;
    this.closing = new WorkerReader(worker);
    this.reader = this.closing;
    this.writer = new BrowserMessageWriter(worker);
    // The server keeps its own faults to itself: one that comes through has ended it, or kept it from starting.
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      this.die(event.message || 'it could not be started');
    });
    worker.addEventListener('messageerror', () => this.die('a message of it could not be read'));
  }

  /** Takes the worker for dead: it is ended, and whoever listens hears that the wire is closed. */
  die(why: string): void {
    if (this.ended) return;
    this.end();
    this.died(why);
    this.closing.close();
  }

  end(): void {
    this.ended = true;
    this.worker.terminate();
  }
}
