import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { run } from '../../language/terminal/program.ts';
import type { Screen } from '../../language/terminal/screen.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own with these files; gone after `dispose`. */
export function folderOf(files: Readonly<Record<string, string | Uint8Array>>): {
  readonly folder: string;
  dispose(): void;
} {
  const folder = mkdtempSync(path.join(tmpdir(), 'laybook-'));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
  }
  return { folder, dispose: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Runs the terminal command in this process, from a folder, with nobody at the keys. */
export const laybook = (folder: string, ...args: string[]): Promise<Ran> => ran(folder, args);

export interface Answered extends Ran {
  /** the questions, as they were asked */
  readonly asked: readonly string[];
}

/** The same with somebody who gives these answers, or what is made at each question, and then goes away. */
export async function answering(
  folder: string,
  answers: readonly string[] | (() => string | undefined),
  ...args: string[]
): Promise<Answered> {
  const next = typeof answers === 'function' ? answers : () => answers[asked.length - 1];
  const asked: string[] = [];
  const told = await ran(folder, args, async (prompt) => {
    asked.push(prompt);
    return next();
  });
  return { ...told, asked };
}

async function ran(folder: string, args: readonly string[], ask?: Screen['ask']): Promise<Ran> {
  let out = '';
  let err = '';
  const code = await run(args, {
    folder,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    paint: (_, text) => text,
    ...(ask === undefined ? {} : { ask }),
  });
  return { code, out, err };
}
