import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { run } from '../../language/terminal/program.ts';

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

/** Runs the terminal command in this process, from a folder. */
export async function laybook(folder: string, ...args: string[]): Promise<Ran> {
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
  });
  return { code, out, err };
}
