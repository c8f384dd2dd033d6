/** Request `laybook/paper`: what is printed of a recipe, as a page: its build sheet, or its records. */
export const paperRequest = 'laybook/paper';

export const paperKinds = ['sheet', 'records'] as const;
export type PaperKind = (typeof paperKinds)[number];

/** Where the text stands in git; only the editor knows. */
export interface WireRevision {
  readonly commit: string;
  readonly date?: string;
  readonly differs: boolean;
}

/** The book as it stood when a recipe had a revision; only the editor knows. */
export interface WirePast {
  readonly revision: number;
  readonly files: readonly { readonly uri: string; readonly text: string }[];
}

export interface PaperParams {
  readonly uri: string;
  readonly kind: PaperKind;
  readonly recipe: string;
  readonly size?: string;
  readonly number?: string;
  readonly date?: string;
  readonly paper: 'a4' | 'letter';
  readonly git?: WireRevision;
  readonly past?: readonly WirePast[];
  /** the body alone, for a page that has a frame; a whole file of HTML; or a PDF */
  readonly form: 'body' | 'html' | 'pdf';
  /** a font file for letters that ours lack, on the machine of the server */
  readonly font?: string;
}

export interface PaperResult {
  readonly title?: string;
  readonly body?: string;
  readonly style?: string;
  readonly html?: string;
  readonly base64?: string;
  /** letters that the font of the PDF lacks */
  readonly lacking?: readonly string[];
  /** revisions that builds name and the book no longer has */
  readonly wantsPast?: readonly number[];
  /** values that the builds come to */
  readonly offers?: readonly WireOffer[];
  /** why there is nothing, in a sentence */
  readonly nothing?: string;
}

/** A value that the builds come to, as an edit that may be accepted. */
export interface WireOffer {
  readonly says: string;
  readonly line: string;
  readonly uri: string;
  readonly from: { readonly line: number; readonly character: number };
  readonly to: { readonly line: number; readonly character: number };
  readonly text: string;
}

/** Request `laybook/newRecord`: a record with blanks, in the order in which they become known. */
export const newRecordRequest = 'laybook/newRecord';
export interface NewRecordParams {
  readonly uri: string;
  readonly recipe: string;
  readonly size?: string;
  /** ISO 8601 */
  readonly date: string;
}
export interface NewRecordResult {
  /** path below the folder of the recipe */
  readonly file?: string;
  /** its lines; a blank is a `?` */
  readonly text?: string;
  readonly nothing?: string;
}
