import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import path from 'node:path';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { type Conversation, type ConversationOptions, converse } from './converse.ts';

const entry = path.resolve(import.meta.dirname, '../../language/server-node.ts');

/** The language server as a process of its own, spoken to as an editor does. */
export interface TestServer extends Conversation {
  readonly process: ChildProcess;
  /** Shuts the server down as the protocol says; the exit code. */
  stop(): Promise<number | null>;
}

export interface ServerOptions extends ConversationOptions {
  /** a module that Node runs before the server */
  readonly before?: string;
}

export async function startServer({ before, ...options }: ServerOptions = {}): Promise<TestServer> {
  const first = before === undefined ? [] : ['--import', before];
  const child = spawn(process.execPath, [...first, entry, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const log: string[] = [];
  child.stderr.on('data', (text: Buffer) => log.push(text.toString()));
  const conversation = await converse(connection, { processId: process.pid, ...options }, log);
  return {
    ...conversation,
    process: child,
    async stop() {
      const exit = once(child, 'exit');
      await connection.sendRequest('shutdown');
      await connection.sendNotification('exit');
      const [code] = (await exit) as [number | null];
      connection.dispose();
      return code;
    },
  };
}
