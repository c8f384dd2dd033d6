import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { type FileSystemNode, URI } from 'langium';
import { type Text, text } from '../../calc/figure/figure.ts';
import { UsageError } from './exit-codes.ts';

/** What the paths of a call come to, as absolute paths in order. */
export interface Found {
  /** the files that are spoken of */
  readonly files: readonly string[];
  /** the folders in which names are looked up */
  readonly folders: readonly string[];
  /** folders below the given ones that may not be read, with the reason */
  readonly unread: readonly Unread[];
}

export interface Unread {
  readonly path: string;
  readonly error: NodeJS.ErrnoException;
}

/** Whether a file or folder belongs to a book, as the editor sees it. */
export type Belongs = (entry: FileSystemNode) => boolean;

/** Finds what is given. Throws a UsageError for a path that is not there or holds no recipe. */
export async function findPaths(given: readonly string[], from: string, belongs: Belongs): Promise<Found> {
  const files = new Set<string>();
  const folders = new Set<string>();
  const unread: Unread[] = [];
  for (const typed of given) {
    const full = path.resolve(from, typed);
    const kind = await stat(full).catch((error: NodeJS.ErrnoException) => {
      throw new UsageError(whyNotRead(typed, error));
    });
    if (kind.isDirectory()) {
      folders.add(full);
      const within = await filesBelow([full], belongs, (folder) => unread.push(folder));
      if (within.length === 0) throw new UsageError(text('there are no .layup files in {path}', { path: typed }));
      for (const file of within) files.add(file);
    } else if (!kind.isFile() || !full.endsWith('.layup'))
      throw new UsageError(text('{path} is no .layup file', { path: typed }));
    else {
      folders.add(path.dirname(full));
      files.add(full);
    }
  }
  return { files: [...files].sort(byName), folders: [...folders], unread };
}

/** The files of some folders and of those in them. Links are not followed: they could lead out of the folder. */
export async function filesBelow(
  folders: readonly string[],
  belongs: Belongs,
  unread: (folder: Unread) => void = () => {},
): Promise<string[]> {
  const found = new Set<string>();
  const seen = new Set<string>();
  const waiting = [...folders];
  for (let folder = waiting.pop(); folder !== undefined; folder = waiting.pop()) {
    if (seen.has(folder)) continue;
    seen.add(folder);
    const entries = await readdir(folder, { withFileTypes: true }).catch((error: NodeJS.ErrnoException) => {
      unread({ path: folder, error });
      return [];
    });
    for (const entry of entries) {
      const full = path.join(folder, entry.name);
      const node = { isFile: entry.isFile(), isDirectory: entry.isDirectory(), uri: URI.file(full) };
      if (!belongs(node)) continue;
      if (node.isDirectory) waiting.push(full);
      else found.add(full);
    }
  }
  return [...found].sort(byName);
}

const reasons: Readonly<Record<string, Text>> = {
  ENOENT: text('{path} is not there'),
  ENOTDIR: text('{path} is not there: a part of the path is a file'),
  EACCES: text('{path} may not be read'),
  EPERM: text('{path} may not be read'),
  EISDIR: text('{path} is a folder'),
};

const unreadable = text('{path} cannot be read ({code})');

/** Why a file or folder, called as it is told, could not be read. */
export const whyNotRead = (path: string, { code, message }: NodeJS.ErrnoException): Text => ({
  ...(reasons[code ?? ''] ?? unreadable),
  figures: { path, code: code ?? message },
});

/** The same order on every machine, whatever its language. */
const byName = (left: string, right: string): number => (left < right ? -1 : left > right ? 1 : 0);

/** A path as it is told: from the folder of the call, with `/`. */
export const told = (file: string, from: string): string =>
  (path.relative(from, file) || '.').split(path.sep).join('/');
