import PDFDocument from 'pdfkit';
import { safe } from '../../view/text.ts';
import { mark, sealed } from '../made-by.ts';
import { fontFile, weights } from './fonts.ts';

export type Doc = PDFKit.PDFDocument;

/** Points of a millimetre: 72 to the inch. */
export const pt = (mm: number): number => (mm * 72) / 25.4;

/** Sizes of paper upright, mm: ISO 216 and ANSI/ASME Y14.1. */
export const papers = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
} as const;
export type PaperName = keyof typeof papers;

export interface PageSize {
  readonly width: number;
  readonly height: number;
}

export const pageSize = (paper: PaperName, landscape = false): PageSize => {
  const { width, height } = papers[paper];
  return landscape ? { width: height, height: width } : { width, height };
};

/** The same input gives the same bytes: no clock. */
const always = new Date(Date.UTC(2000, 0, 1));

/** What the library keeps to itself, and we need: the dictionary of the document, and the font's own table of letters. */
interface Inside {
  readonly _root: { readonly data: Record<string, unknown> };
  readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
}
const inside = (doc: Doc): Inside => doc as unknown as Inside;

const parsed = new Map<string, Buffer>();

/**
 * Our own letters as the library has parsed them, in a document that is thrown away: it takes them instead of a file. They are
 * parsed once and not for each of fifty files.
 */
function lettersOf(file: string): Buffer {
  let letters = parsed.get(file);
  if (letters === undefined) {
    letters = inside(new PDFDocument({ autoFirstPage: false, font: file }))._font.font as unknown as Buffer;
    parsed.set(file, letters);
  }
  return letters;
}

/**
 * A new document without pages, in our own letters alone (a standard font beside them spoils files). Print dialogs are asked not to
 * fit it to the page. The drawing ground is the library's: points from the upper left corner.
 */
export function newPdf(title: string, more: PDFKit.PDFDocumentOptions = {}): Doc {
  const doc = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    ...more,
    pdfVersion: '1.7',
    font: '',
    info: { Title: safe(title), Creator: mark, Producer: 'Laybook', CreationDate: always },
  });
  for (const file of weights.map(fontFile)) doc.registerFont(file, lettersOf(file));
  doc.font(fontFile('regular'));
  inside(doc)._root.data.ViewerPreferences = doc.ref({ PrintScaling: 'None', DisplayDocTitle: true });
  return doc;
}

export function addPage(doc: Doc, { width, height }: PageSize): void {
  doc.addPage({ size: [pt(width), pt(height)], margin: 0 });
}

/** Whether the font in use has a letter. */
export const hasLetter = (doc: Doc, letter: string): boolean =>
  inside(doc)._font.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0);

/** Ends the document; its bytes, sealed. */
export function finishedPdf(doc: Doc): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => void chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        whole.set(chunk, at);
        at += chunk.length;
      }
      resolve(sealed(whole));
    });
    doc.end();
  });
}
