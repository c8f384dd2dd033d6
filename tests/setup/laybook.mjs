// `npm run --silent laybook -- ARGUMENTS`: the terminal command from a clone, built again when a source has changed.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { buildAll } from './build.mjs';
import { filesBelow } from './files.mjs';
import { generate } from './generate.mjs';
import { dist, root } from './paths.mjs';
import { task } from './task.mjs';

const bundle = path.join(dist, 'laybook.cjs');

/** Whether a source is newer than the bundle. */
function isStale() {
  if (!existsSync(bundle)) return true;
  const built = statSync(bundle).mtimeMs;
  const sources = ['calc', 'language'].flatMap((folder) =>
    ['.ts', '.md', '.layup', '.langium', '.json'].flatMap((ending) =>
      filesBelow(folder, ending).map((file) => path.join(root, folder, file)),
    ),
  );
  return [...sources, path.join(root, 'package-lock.json')].some((file) => statSync(file).mtimeMs > built);
}

/** Runs the terminal command in the folder where npm was called; returns its exit code. */
export async function laybook(args, options = {}) {
  if (isStale()) {
    generate();
    // whole: it reads what makes PDF files, their fonts and the pages from beside it
    await buildAll();
  }
  const cwd = process.env.INIT_CWD ?? process.cwd();
  const result = spawnSync(process.execPath, [bundle, ...args], {
    cwd,
    stdio: 'inherit',
    ...options,
  });
  if (result.error) throw result.error;
  return result.status ?? 3;
}

await task(import.meta.filename, () => laybook(process.argv.slice(2)), 3);
