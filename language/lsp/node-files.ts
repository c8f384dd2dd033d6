import { open } from 'node:fs/promises';
import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { mostBytes } from '../grammar/limits.ts';

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
