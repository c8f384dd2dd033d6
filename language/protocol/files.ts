/**
 * Files that the server cannot open itself: in a browser, and folders that are on no disk. It asks the editor, which answers for
 * the folders of the workspace alone; what lies outside is refused with an error of the protocol.
 */

export type FileKind = 'file' | 'folder' | 'other';

/** Request `laybook/stat`: what an address stands for. */
export const statRequest = 'laybook/stat';
export interface StatParams {
  readonly uri: string;
}
export interface StatResult {
  readonly kind: FileKind;
}

/** Request `laybook/readDirectory`: what lies in a folder. */
export const readDirectoryRequest = 'laybook/readDirectory';
export interface ReadDirectoryParams {
  readonly uri: string;
}
export interface ReadDirectoryResult {
  readonly entries: readonly { readonly name: string; readonly kind: FileKind }[];
}

/** Request `laybook/readFile`: the text of a file. */
export const readFileRequest = 'laybook/readFile';
export interface ReadFileParams {
  readonly uri: string;
  /** so much from the beginning is enough, bytes */
  readonly mostBytes: number;
}
export interface ReadFileResult {
  readonly text: string;
}

/** Request `laybook/readBytes`, asked as `laybook/readFile` is: what is in a file whose writing is not known before. */
export const readBytesRequest = 'laybook/readBytes';
export interface ReadBytesResult {
  readonly base64: string;
}
