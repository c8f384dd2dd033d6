import { lstat, mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type Text, text } from '../../calc/figure/figure.ts';
import { either, listed } from '../../calc/figure/listed.ts';
import { madeByLaybook } from '../export/made-by.ts';
import { UsageError } from './exit-codes.ts';
import { told } from './paths.ts';

export interface FileToWrite {
  /** name within the folder; no way out of it */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface WriteOptions {
  /** write over what somebody else has made */
  readonly force?: boolean;
  /** the folder that the call stands in, for messages */
  readonly from: string;
}

/**
 * Writes files into a folder, which is made where it is not there: each whole or not at all, and none at all where one stands in
 * the way. In the way stands a file that we did not make or that was changed since, unless it says the same. Throws a UsageError.
 */
export async function writeFiles(
  folder: string,
  files: readonly FileToWrite[],
  { force = false, from }: WriteOptions,
): Promise<void> {
  const targets = files.map(({ name, bytes }) => {
    if (name === '' || name !== path.basename(name) || name === '..') throw new Error(`${name} is no name of a file`);
    return { target: path.join(folder, name), bytes };
  });
  const inTheWay = (
    await Promise.all(
      targets.map(async ({ target, bytes }) => ((await mayWrite(target, bytes, force)) ? [] : [told(target, from)])),
    )
  ).flat();
  if (inTheWay.length > 0) {
    const files = listed(inTheWay.slice(0, 3));
    const more = inTheWay.length - 3;
    throw new UsageError(
      more > 0
        ? text(
            '{files} and {more} others would be written over, and laybook did not make it or it was changed since; --force writes over it',
            { files, more },
          )
        : text(
            '{files} would be written over, and laybook did not make it or it was changed since; --force writes over it',
            { files },
          ),
    );
  }
  await mkdir(folder, { recursive: true }).catch(cannot(told(folder, from)));
  await Promise.all(targets.map(({ target, bytes }) => writeWhole(target, bytes).catch(cannot(told(target, from)))));
}

/** Writes one file, by its path as it was typed. */
export async function writeOne(typed: string, bytes: Uint8Array, options: WriteOptions): Promise<void> {
  const target = path.resolve(options.from, typed);
  await writeFiles(path.dirname(target), [{ name: path.basename(target), bytes }], options);
}

async function mayWrite(target: string, bytes: Uint8Array, force: boolean): Promise<boolean> {
  const there = await lstat(target).catch(() => undefined);
  if (there === undefined) return true;
  // A link is put aside, not followed; a folder is never in question.
  if (!there.isFile()) return force && there.isSymbolicLink();
  if (force) return true;
  const before = await readFile(target).catch(() => undefined);
  return before !== undefined && (madeByLaybook(before) || before.equals(bytes));
}

let count = 0;

/** Under another name first, so that nobody ever reads half a file. */
export async function writeWhole(target: string, bytes: Uint8Array): Promise<void> {
  const draft = path.join(path.dirname(target), `.laybook-${process.pid}-${count++}.part`);
  try {
    await writeFile(draft, bytes, { flag: 'wx' });
    await rename(draft, target);
  } catch (error) {
    await rm(draft, { force: true });
    throw error;
  }
}

const reasons: Readonly<Record<string, Text>> = {
  EACCES: text('{path} may not be written'),
  EPERM: text('{path} may not be written'),
  EROFS: text('{path} may not be written'),
  ENOSPC: text('{path} does not fit on the disk'),
  EEXIST: text('{path} is a file'),
  ENOTDIR: text('{path} is not there: a part of the path is a file'),
  EISDIR: text('{path} is a folder'),
};

const unwritable = text('{path} cannot be written ({code})');

/** Why a file, called as it is told, could not be written. */
export const whyNotWritten = (path: string, { code, message }: NodeJS.ErrnoException): Text => ({
  ...(reasons[code ?? ''] ?? unwritable),
  figures: { path, code: code ?? message },
});

/** Throws why a file could not be written, as a UsageError. */
export const cannot =
  (path: string, more = (problem: Text): Text => problem) =>
  (error: NodeJS.ErrnoException) => {
    throw new UsageError(more(whyNotWritten(path, error)));
  };

/** What `--out` may end with, where it ends with something else. */
export const wrongEnding = (endings: readonly string[], ending: string): UsageError =>
  new UsageError(
    ending === ''
      ? text('--out ends with {endings}, not with nothing', { endings: either(endings) })
      : text('--out ends with {endings}, not with {ending}', { endings: either(endings), ending }),
  );
