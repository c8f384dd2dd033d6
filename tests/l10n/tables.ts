import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../harness/sources.ts';

/** A file that a translator edits: English texts (or keys of the manifest) with their translations. */
export type Table = Readonly<Record<string, string>>;

export interface Kind {
  readonly name: string;
  /** the file of a locale, in the checkout */
  file(locale: string): string;
}

export const readTable = (file: string): Table => JSON.parse(readFileSync(path.join(root, file), 'utf8'));

/** Sorted by the text, not by a locale: the same on every machine. */
export function writeTable(file: string, table: Table): void {
  const sorted = Object.fromEntries(Object.entries(table).sort(([a], [b]) => (a < b ? -1 : 1)));
  mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
  writeFileSync(path.join(root, file), `${JSON.stringify(sorted, null, 2)}\n`);
}

/** Languages that there is a table of the server for. */
export const locales = (): string[] =>
  readdirSync(path.join(root, 'language/l10n'))
    .filter((name) => name.endsWith('.json'))
    .map((name) => name.replace(/\.json$/, ''));

/** `{reach}`, `{0}`: in the order of the alphabet. */
export const placeholders = (text: string): string[] => [...text.matchAll(/\{\w+\}/g)].map(([name]) => name).sort();

/** `[words](command:laybook.newRecipe)`, `#editor.codeLens#`: what an editor acts upon. */
export const links = (text: string): string[] =>
  [...text.matchAll(/\]\([^)]*\)|`#[\w.]+#`/g)].map(([link]) => link).sort();
