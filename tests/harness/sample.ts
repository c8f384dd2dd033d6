import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const folder = path.resolve(import.meta.dirname, '../../extension/sample');

/** The recipes, materials, tools and the shop of the sample workshop, by file; without its records. */
export const sampleFiles: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder)
    .filter((file) => file.endsWith('.layup'))
    .map((file) => [file, readFileSync(path.join(folder, file), 'utf8')]),
);
