import { type FileSystemNode, type URI, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { ConfinedFiles } from '../book/drawings.ts';
import { mostBytes } from '../grammar/limits.ts';
import { fromBase64 } from '../protocol/base64.ts';
import {
  type FileKind,
  type ReadBytesResult,
  type ReadDirectoryParams,
  type ReadDirectoryResult,
  type ReadFileParams,
  type ReadFileResult,
  readBytesRequest,
  readDirectoryRequest,
  readFileRequest,
  type StatParams,
  type StatResult,
  statRequest,
} from '../protocol/files.ts';

const nodeOf = (uri: URI, kind: FileKind): FileSystemNode => ({
  uri,
  isFile: kind === 'file',
  isDirectory: kind === 'folder',
});

/** Files read by the editor, for a server that cannot: see `protocol/files.ts`. Its answers cannot be waited for. */
export class ClientFiles implements ConfinedFiles {
  private readonly connection: Connection;

  constructor(connection: Connection) {
    this.connection = connection;
  }

  async stat(uri: URI): Promise<FileSystemNode> {
    const params: StatParams = { uri: uri.toString() };
    return nodeOf(uri, (await this.connection.sendRequest<StatResult>(statRequest, params)).kind);
  }

  exists(uri: URI): Promise<boolean> {
    return this.stat(uri).then(
      () => true,
      () => false,
    );
  }

  async readDirectory(uri: URI): Promise<FileSystemNode[]> {
    const params: ReadDirectoryParams = { uri: uri.toString() };
    const { entries } = await this.connection.sendRequest<ReadDirectoryResult>(readDirectoryRequest, params);
    return entries.map(({ name, kind }) => nodeOf(UriUtils.joinPath(uri, name), kind));
  }

  async readFile(uri: URI): Promise<string> {
    const params: ReadFileParams = { uri: uri.toString(), mostBytes };
    return (await this.connection.sendRequest<ReadFileResult>(readFileRequest, params)).text;
  }

  /** The editor hands out nothing from outside of the workspace's folders. */
  async readInside(uri: URI, _folder: URI, most: number): Promise<Uint8Array> {
    const params: ReadFileParams = { uri: uri.toString(), mostBytes: most };
    const { base64 } = await this.connection.sendRequest<ReadBytesResult>(readBytesRequest, params);
    return fromBase64(base64);
  }

  readBinary(uri: URI): Promise<Uint8Array> {
    return Promise.reject(onlyText(uri));
  }

  statSync(uri: URI): FileSystemNode {
    throw notAtOnce(uri);
  }

  existsSync(uri: URI): boolean {
    throw notAtOnce(uri);
  }

  readBinarySync(uri: URI): Uint8Array {
    throw notAtOnce(uri);
  }

  readFileSync(uri: URI): string {
    throw notAtOnce(uri);
  }

  readDirectorySync(uri: URI): FileSystemNode[] {
    throw notAtOnce(uri);
  }
}

const onlyText = (uri: URI): Error => new Error(`${uri.toString(true)}: the editor hands over texts alone`);
const notAtOnce = (uri: URI): Error => new Error(`${uri.toString(true)}: the editor cannot be asked and waited for`);
