/** Request `laybook/cutFiles`: the files that the pieces of a recipe are cut from. Nothing is written by the server. */
export const cutFilesRequest = 'laybook/cutFiles';

export const cutFormats = ['svg', 'dxf', 'pdf'] as const;
export type CutFormat = (typeof cutFormats)[number];

/** A file a piece, or all pieces of a material side by side. */
export const cutOrders = ['piece', 'material'] as const;
export type CutBy = (typeof cutOrders)[number];

export const cutPapers = ['a4', 'letter'] as const;
export type CutPaper = (typeof cutPapers)[number];

export interface CutFilesParams {
  readonly uri: string;
  readonly recipe: string;
  readonly size?: string;
  readonly format: CutFormat;
  readonly by: CutBy;
  /** of a PDF */
  readonly paper: CutPaper;
  /** how many parts are cut for */
  readonly quantity: number;
}

export interface CutFilesResult {
  readonly files: readonly WireCutFile[];
  /** what has no piece, and why: a line each */
  readonly missing: readonly string[];
  /** why there is no file, in a sentence */
  readonly nothing?: string;
}

export interface WireCutFile {
  readonly name: string;
  /** one of the two */
  readonly text?: string;
  readonly base64?: string;
  /** what is on it, and what whoever cuts it should know */
  readonly words: string;
}
