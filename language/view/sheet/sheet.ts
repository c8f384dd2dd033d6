import type { Drawing } from '../../../calc/drawing/drawing.ts';
import type { Blank } from '../../words/sheet-blanks.ts';
import type { Table } from '../report/section.ts';

/** Where the text of a recipe stands in git; known to whoever asks for the sheet. */
export interface Revisioned {
  /** short name of the commit */
  readonly commit: string;
  /** day of the commit, ISO 8601 */
  readonly date?: string;
  /** the text that the sheet was made from is not that of the commit */
  readonly differs: boolean;
}

/** What stands on the sheet that the recipe does not say. */
export interface SheetOrder {
  /** number of the build, `31` */
  readonly number?: string;
  /** day of the build, ISO 8601; a blank to write on where absent */
  readonly date?: string;
  readonly git?: Revisioned;
}

/** A pot as it is weighed: what the balance must show after each part. */
export interface SheetPot {
  readonly title: string;
  readonly table: Table;
  /** where there are several: a row for each, to write down what was weighed and when */
  readonly log?: Table;
  readonly notes: readonly string[];
}

/** A line of the process, with everything that is needed to do it. */
export interface SheetStep {
  /** `7`, or `7.2` for a line in a block */
  readonly number: string;
  readonly path: string;
  readonly what: string;
  /** what the recipe says behind the first comma */
  readonly says: readonly string[];
  /** hands, waiting, who and what is occupied */
  readonly takes: string;
  readonly why: string;
  /** pieces or layers that go down, with what the bench must know of each */
  readonly pieces?: Table;
  readonly pots: readonly SheetPot[];
  readonly cautions: readonly string[];
  readonly notes: readonly string[];
  /** findings that the recipe accepts here, with its reasons */
  readonly accepted: readonly string[];
  readonly blanks: readonly Blank[];
  /** what is read more than once */
  readonly readings?: Table;
}

export interface SheetDrawing {
  readonly title: string;
  /** from where it is seen, and what is drawn larger than it is */
  readonly note: string;
  readonly drawing: Drawing;
}

/** One part to cut, with a small drawing where the piece is known. */
export interface CutRow {
  readonly cells: readonly string[];
  readonly sketch?: Drawing;
}

/** Headings and fixed words, in the language of the reader: who lays the sheet out knows no language. */
export interface SheetWords {
  readonly begin: string;
  readonly lots: readonly string[];
  readonly notes: string;
  readonly open: string;
  readonly drawings: string;
  readonly cut: string;
  /** above the small drawings of the pieces */
  readonly sketch: string;
  readonly weigh: string;
  readonly steps: string;
  readonly accepted: string;
  /** stands before an accepted finding at its step */
  readonly accepts: string;
  readonly caution: string;
  readonly cautions: string;
  readonly signOff: string;
  readonly signHead: readonly string[];
  readonly signRows: readonly string[];
  readonly continued: string;
  /** `page {page} of {pages}`, with the places still open */
  readonly page: string;
  /** in the place of the code, where its text is too long for one */
  readonly noCode: string;
  /** what the font lacks: `{letters}` still open */
  readonly lacking: string;
}

/** A build sheet as plain data: the same for the screen, for HTML and for PDF. */
export interface Sheet {
  readonly title: string;
  /** recipe, size, revision, number: what the code on the sheet says */
  readonly code: string;
  readonly identity: readonly (readonly [string, string])[];
  readonly facts: readonly (readonly [string, string])[];
  readonly blanks: readonly Blank[];
  /** a blank for the lot of each material */
  readonly lots: readonly string[];
  readonly drawings: readonly SheetDrawing[];
  readonly cut: { readonly head: readonly string[]; readonly rows: readonly CutRow[] };
  readonly weigh: Table;
  readonly steps: readonly SheetStep[];
  /** findings that the recipe accepts at no step, with its reasons */
  readonly accepted: readonly string[];
  /** notes of the recipe as a whole */
  readonly notes: readonly string[];
  readonly hazards: readonly { readonly title: string; readonly lines: readonly string[] }[];
  /** what cannot be told, and what stands open */
  readonly open: readonly string[];
  readonly foot: string;
  readonly words: SheetWords;
}
