/** Reads for the server what it cannot open itself: files of the workspace that are on no disk, and all files in a browser. */
import * as vscode from 'vscode';
import { ErrorCodes, ResponseError } from 'vscode-languageclient';
import { toBase64 } from '../language/protocol/base64.ts';
import { type RulePageParams, type RulePageResult, rulePageRequest } from '../language/protocol/explain.ts';
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
} from '../language/protocol/files.ts';

const read = async ({ uri, mostBytes }: ReadFileParams): Promise<Uint8Array> =>
  (await vscode.workspace.fs.readFile(inWorkspace(uri))).subarray(0, mostBytes);

/** What is needed of the language client. */
interface Asker {
  onRequest<Params, Result>(method: string, handler: (params: Params) => Promise<Result>): vscode.Disposable;
}

/** What is neither, and links, which might lead in a circle, are left alone, as on the disk. */
function kindOf(type: vscode.FileType): FileKind {
  if (type === vscode.FileType.File) return 'file';
  return type === vscode.FileType.Directory ? 'folder' : 'other';
}

/** The address, where it lies in a folder of the workspace; refuses every other. */
function inWorkspace(address: string): vscode.Uri {
  const uri = vscode.Uri.parse(address, true);
  const climbs = uri.path.split('/').some((part) => part === '..' || part === '.');
  if (climbs || vscode.workspace.getWorkspaceFolder(uri) === undefined) {
    throw new ResponseError(ErrorCodes.InvalidParams, `${address} is not in a folder of the workspace`);
  }
  return uri;
}

/** Pages of the rules lie in one file of the extension, read when the first page is wanted. */
function rulePages(extension: vscode.Uri): (rule: string) => Promise<string | undefined> {
  let read: Promise<Readonly<Record<string, string>>> | undefined;
  return async (rule) => {
    read ??= Promise.resolve(
      vscode.workspace.fs.readFile(vscode.Uri.joinPath(extension, 'dist', 'rule-pages.json')),
    ).then((bytes) => JSON.parse(new TextDecoder().decode(bytes)));
    const pages = await read;
    return Object.hasOwn(pages, rule) ? pages[rule] : undefined;
  };
}

/** Must be called before the client starts: the server asks as soon as it knows the folders. */
export function readForServer(client: Asker, extension: vscode.Uri): vscode.Disposable {
  const pageOf = rulePages(extension);
  const { fs } = vscode.workspace;
  return vscode.Disposable.from(
    client.onRequest<StatParams, StatResult>(statRequest, async ({ uri }) => ({
      kind: kindOf((await fs.stat(inWorkspace(uri))).type),
    })),
    client.onRequest<ReadDirectoryParams, ReadDirectoryResult>(readDirectoryRequest, async ({ uri }) => ({
      entries: (await fs.readDirectory(inWorkspace(uri))).map(([name, type]) => ({ name, kind: kindOf(type) })),
    })),
    client.onRequest<RulePageParams, RulePageResult>(rulePageRequest, async ({ rule }) => {
      const text = await pageOf(rule);
      return text === undefined ? {} : { text };
    }),
    client.onRequest<ReadFileParams, ReadFileResult>(readFileRequest, async (params) => ({
      text: new TextDecoder().decode(await read(params)),
    })),
    client.onRequest<ReadFileParams, ReadBytesResult>(readBytesRequest, async (params) => ({
      base64: toBase64(await read(params)),
    })),
  );
}
