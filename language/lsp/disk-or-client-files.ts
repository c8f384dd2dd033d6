import type { FileSystemNode, URI } from 'langium';
import type { ClientFiles } from './client-files.ts';
import { BoundedFiles } from './node-files.ts';

const onDisk = (uri: URI): boolean => uri.scheme === 'file';

/** The files of the disk; what is on no disk, such as a folder in a repository that was never cloned, the editor reads. */
export class DiskOrClientFiles extends BoundedFiles {
  private readonly elsewhere: ClientFiles;

  constructor(elsewhere: ClientFiles) {
    super();
    this.elsewhere = elsewhere;
  }

  override stat(uri: URI): Promise<FileSystemNode> {
    return onDisk(uri) ? super.stat(uri) : this.elsewhere.stat(uri);
  }

  override exists(uri: URI): Promise<boolean> {
    return onDisk(uri) ? super.exists(uri) : this.elsewhere.exists(uri);
  }

  override readDirectory(uri: URI): Promise<FileSystemNode[]> {
    return onDisk(uri) ? super.readDirectory(uri) : this.elsewhere.readDirectory(uri);
  }

  override readInside(uri: URI, folder: URI, most: number): Promise<Uint8Array> {
    return onDisk(uri) ? super.readInside(uri, folder, most) : this.elsewhere.readInside(uri, folder, most);
  }

  override readFile(uri: URI): Promise<string> {
    return onDisk(uri) ? super.readFile(uri) : this.elsewhere.readFile(uri);
  }
}
