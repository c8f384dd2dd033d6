/** The files of the checkout and what they import: for tests that look at the code itself. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';

export const root = path.resolve(import.meta.dirname, '../..');

/** Files that are in the repository or about to be, with `/`; what git ignores is left out. */
export const files: readonly string[] = execFileSync(
  'git',
  ['ls-files', '-z', '--cached', '--others', '--exclude-standard', '--deduplicate'],
  { cwd: root, encoding: 'utf8' },
)
  .split('\0')
  .filter((file) => file !== '');

export const text = (file: string): string => readFileSync(path.join(root, file), 'utf8');

export interface Import {
  readonly from: string;
  /** A file of ours as a path from the root, or the name that a package is imported by. */
  readonly to: string;
  readonly ours: boolean;
  readonly typeOnly: boolean;
}

const statement =
  /^\s*(?:import|export)\b\s*(type\b)?[^'"`;]*?from\s*'([^']+)'|^\s*import\s*'([^']+)'|\bimport\('([^']+)'\)/gm;

/** The imports of a TypeScript file. */
export function importsOf(file: string): Import[] {
  return [...text(file).matchAll(statement)].map(([, type, from, bare, dynamic]) => {
    const name = from ?? bare ?? dynamic ?? '';
    const ours = name.startsWith('.');
    const to = ours ? path.posix.normalize(path.posix.join(path.posix.dirname(file), name)) : name;
    return { from: file, to, ours, typeOnly: type !== undefined };
  });
}
