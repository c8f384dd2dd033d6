import { open } from 'node:fs/promises';
import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { longestText } from '../grammar/limits.ts';

/** No character of UTF-8 takes more bytes: this much of a file is at least one character more than is ever parsed. */
const mostBytes = 4 * (longestText + 1);

/** The files of the disk; of a file that is too long to be parsed, only as much as shows that it is. */
export class BoundedFiles extends NodeFileSystemProvider {
  override async readFile(uri: URI): Promise<string> {
    const file = await open(uri.fsPath);
    try {
      const { size } = await file.stat();
      if (size <= mostBytes) return await file.readFile('utf8');
      const { buffer, bytesRead } = await file.read(Buffer.alloc(mostBytes), 0, mostBytes, 0);
      return buffer.toString('utf8', 0, bytesRead);
    } finally {
      await file.close();
    }
  }
}
