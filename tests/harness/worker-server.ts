import { EventEmitter } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  createProtocolConnection,
  type DataCallback,
  type Message,
} from 'vscode-languageserver-protocol/node';
import { toBase64 } from '../../language/protocol/base64.ts';
import type {
  ReadBytesResult,
  ReadDirectoryParams,
  ReadDirectoryResult,
  ReadFileParams,
  ReadFileResult,
  StatParams,
  StatResult,
} from '../../language/protocol/files.ts';
import { readBytesRequest, readDirectoryRequest, readFileRequest, statRequest } from '../../language/protocol/files.ts';
import { dist } from '../setup/paths.mjs';
import { type Conversation, type ConversationOptions, converse } from './converse.ts';

const origin = 'http://laybook.test';
export const workerBundle = path.join(dist, 'server-browser.js');

/** The language server in a web worker of a real browser; the page hands messages on and does nothing else. */
export interface WorkerServer extends Conversation {
  /** addresses that the server asked the editor for */
  readonly asked: ReadonlySet<string>;
  /** files of the folders by address; a test may change them */
  readonly files: Map<string, string>;
  stop(): Promise<void>;
}

class PageReader extends AbstractMessageReader {
  private readonly messages = new EventEmitter();

  receive(message: Message): void {
    this.messages.emit('message', message);
  }

  listen(callback: DataCallback) {
    this.messages.on('message', callback);
    return { dispose: () => void this.messages.off('message', callback) };
  }
}

class PageWriter extends AbstractMessageWriter {
  private readonly page: Page;
  private last: Promise<void> = Promise.resolve();

  constructor(page: Page) {
    super();
    this.page = page;
  }

  write(message: Message): Promise<void> {
    // One after the other: the order of messages counts.
    this.last = this.last.then(() => this.page.evaluate(toWorker, message));
    return this.last;
  }

  end(): void {}
}

/** Runs in the page. */
function toWorker(message: Message): void {
  (globalThis as unknown as { readonly worker: { postMessage(message: Message): void } }).worker.postMessage(message);
}

const pageText = `<!doctype html><title>Laybook</title><script>
  globalThis.worker = new Worker('/server-browser.js');
  worker.onmessage = ({ data }) => fromServer(data);
  worker.onerror = ({ message }) => fromServerError(message);
</script>`;

export async function startWorkerServer(
  page: Page,
  given: Readonly<Record<string, string>>,
  options: ConversationOptions,
): Promise<WorkerServer> {
  if (!existsSync(workerBundle)) throw new Error(`${workerBundle} has not been built: npm run build`);
  const files = new Map(Object.entries(given));
  const asked = new Set<string>();
  const faults: string[] = [];
  await page.route(`${origin}/**`, (route) => {
    const body = route.request().url().endsWith('.js') ? readFileSync(workerBundle) : pageText;
    return route.fulfill({ contentType: typeof body === 'string' ? 'text/html' : 'text/javascript', body });
  });
  const reader = new PageReader();
  await page.exposeFunction('fromServer', (message: Message) => reader.receive(message));
  await page.exposeFunction('fromServerError', (message: string) => void faults.push(message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(origin);
  const connection = createProtocolConnection(reader, new PageWriter(page));

  const ask = (uri: string): string => {
    asked.add(uri);
    return uri;
  };
  connection.onRequest(statRequest, ({ uri }: StatParams): StatResult => {
    const address = ask(uri);
    if (files.has(address)) return { kind: 'file' };
    if ([...files.keys()].some((file) => file.startsWith(`${address}/`))) return { kind: 'folder' };
    throw new Error(`${address} is not there`);
  });
  connection.onRequest(readDirectoryRequest, ({ uri }: ReadDirectoryParams): ReadDirectoryResult => {
    const start = `${ask(uri)}/`;
    const below = [...files.keys()].filter((file) => file.startsWith(start)).map((file) => file.slice(start.length));
    const names = new Map(below.map((file) => [file.split('/')[0] ?? '', file.includes('/')]));
    return { entries: [...names].map(([name, isFolder]) => ({ name, kind: isFolder ? 'folder' : 'file' })) };
  });
  connection.onRequest(readFileRequest, ({ uri }: ReadFileParams): ReadFileResult => {
    const text = files.get(ask(uri));
    if (text === undefined) throw new Error(`${uri} is not there`);
    return { text };
  });
  connection.onRequest(readBytesRequest, ({ uri, mostBytes }: ReadFileParams): ReadBytesResult => {
    const text = files.get(ask(uri));
    if (text === undefined) throw new Error(`${uri} is not there`);
    return { base64: toBase64(new TextEncoder().encode(text).subarray(0, mostBytes)) };
  });
  const conversation = await converse(connection, options);
  return {
    ...conversation,
    asked,
    files,
    async stop() {
      await connection.sendRequest('shutdown');
      connection.dispose();
      await page.close();
      if (faults.length > 0) throw new Error(`the worker told of faults:\n${faults.join('\n')}`);
    },
  };
}
