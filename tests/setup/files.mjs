// Small file helpers of the set-up scripts.
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';

/** Files below a folder of the checkout that end in `ending`, as paths from `folder` with `/`, sorted. */
export function filesBelow(folder, ending) {
  const full = path.join(root, folder);
  if (!existsSync(full)) return [];
  return readdirSync(full, { recursive: true })
    .map((name) => name.split(path.sep).join('/'))
    .filter((name) => name.endsWith(ending) && statSync(path.join(full, name)).isFile())
    .sort();
}

/** Text of a file of the checkout. */
export const textOf = (file) => readFileSync(path.join(root, file), 'utf8');

/** Writes a file unless it holds the text already, so that its date tells when it last changed. */
export function writeIfChanged(file, text) {
  const full = path.join(root, file);
  if (existsSync(full) && readFileSync(full, 'utf8') === text) return;
  mkdirSync(path.dirname(full), { recursive: true });
  writeFileSync(full, text);
}
