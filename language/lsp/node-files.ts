import { closeSync, fstatSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { open, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { type ConfinedFiles, IsNoFile, LiesOutside } from '../book/drawings.ts';
import { mostBytes } from '../grammar/limits.ts';

/** The files of the disk; of a file that is too long to be parsed, only as much as shows that it is. */
export class BoundedFiles extends NodeFileSystemProvider implements ConfinedFiles {
  override async readFile(uri: URI): Promise<string> {
    return (await beginning(uri.fsPath, mostBytes)).toString('utf8');
  }

  /** For a command that has nothing else to do meanwhile: many small files are read several times as fast. */
  override readFileSync(uri: URI): string {
    return beginningAtOnce(uri.fsPath, mostBytes);
  }

  /** Where links lead is looked at before anything is read; a name that leads to another computer is not followed. */
  async readInside(uri: URI, folder: URI, most: number): Promise<Uint8Array> {
    if (uri.scheme !== 'file' || uri.authority !== folder.authority) throw new LiesOutside(uri.toString(true));
    const [file, root] = [await realpath(uri.fsPath), await realpath(folder.fsPath)];
    const way = path.relative(root, file);
    if (way === '' || way === '..' || way.startsWith(`..${path.sep}`) || path.isAbsolute(way))
      throw new LiesOutside(uri.toString(true));
    return await beginning(file, most);
  }
}

/** What is in a file, no more of it than `most` bytes. What is no file, a pipe say, would never end. */
async function beginning(name: string, most: number): Promise<Buffer> {
  const stats = await stat(name);
  if (!stats.isFile()) throw new IsNoFile(`${name} is no file`);
  const file = await open(name);
  try {
    const { size } = await file.stat();
    if (size <= most) return await file.readFile();
    const { buffer, bytesRead } = await file.read(Buffer.alloc(most), 0, most, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

function beginningAtOnce(name: string, most: number): string {
  if (!statSync(name).isFile()) throw new IsNoFile(`${name} is no file`);
  const file = openSync(name, 'r');
  try {
    if (fstatSync(file).size <= most) return readFileSync(file, 'utf8');
    const buffer = Buffer.alloc(most);
    return buffer.toString('utf8', 0, readSync(file, buffer, 0, most, 0));
  } finally {
    closeSync(file);
  }
}
