import type { Sheet } from '../../../view/sheet/sheet.ts';
import { codeFields, codePath } from '../../code.ts';
import { type Doc, finishedPdf, newPdf, type PaperName, pageSize, pt } from '../document.ts';
import { type FontFiles, useFonts } from '../fonts.ts';
import type { MadePdf } from '../tiled.ts';
import { lackingLetters } from '../words.ts';
import { type Block, besides, drawn, framed, lengthOfWords, stacked, words } from './blocks.ts';
import { Flow } from './flow.ts';
import { blankLines, flowing } from './labelled.ts';
import { paragraphs, putStep } from './steps.ts';
import { tableBlocks } from './tables.ts';

export interface SheetPdfOptions {
  readonly paper: PaperName;
  /** other fonts, for letters that ours lack */
  readonly fonts?: FontFiles;
}

const body = 12;
const small = 10;
/** letters that are lacking, and told of one by one */
const most = 40;
const margins = { side: 14, top: 16, bottom: 16 };

/** The sheet as a PDF: upright, black on white, 12 pt; a step and all that it needs stand on one page. */
export async function sheetPdf(sheet: Sheet, { paper, fonts }: SheetPdfOptions): Promise<MadePdf> {
  const doc = newPdf(`${sheet.title} (${sheet.code})`, { bufferPages: true });
  if (fonts !== undefined) {
    useFonts(doc, fonts);
    for (const file of Object.values(fonts)) loadable(doc, file);
  }
  const texts = textsOf(sheet);
  const lacking = lackingLetters(doc, texts);
  const flow = new Flow(doc, pageSize(paper), margins);
  const { words: said } = sheet;
  header(doc, flow, sheet);
  const letters = lacking.slice(0, most).map(numbered).join(', ') + (lacking.length > most ? ' …' : '');
  if (lacking.length > 0)
    flow.put(framed(doc, words(doc, said.lacking.replace('{letters}', letters), { size: small }), 0.4));
  section(doc, flow, said.begin, [blankLines(doc, sheet.blanks, body)]);
  flow.table(tableBlocks(doc, { head: said.lots, right: [], rows: sheet.lots.map((name) => [name, '', '']) }));
  section(doc, flow, said.notes, lines(doc, sheet.notes));
  section(doc, flow, said.open, lines(doc, sheet.open));
  section(
    doc,
    flow,
    said.drawings,
    sheet.drawings.map(({ title, note, drawing }) =>
      stacked([drawn(doc, drawing, 150), words(doc, `${title}. ${note}`, { size: small })]),
    ),
  );
  heading(doc, flow, said.cut);
  const sketches = sheet.cut.rows.map(({ sketch }) => sketch);
  flow.table(
    tableBlocks(
      doc,
      { head: sheet.cut.head, right: [3, 4, 5], rows: sheet.cut.rows.map(({ cells }) => cells) },
      sketches.some((each) => each !== undefined) ? { head: said.sketch, of: sketches } : undefined,
    ),
  );
  heading(doc, flow, said.weigh);
  flow.table(tableBlocks(doc, sheet.weigh));
  heading(doc, flow, said.steps);
  for (const step of sheet.steps) putStep(doc, flow, step, said);
  section(doc, flow, said.accepted, lines(doc, sheet.accepted));
  section(
    doc,
    flow,
    said.cautions,
    sheet.hazards.map(({ title, lines: told }) =>
      stacked([
        words(doc, title, { size: body, weight: 'bold' }),
        ...told.map((each) => words(doc, each, { size: small })),
      ]),
    ),
  );
  heading(doc, flow, said.signOff);
  const sign = tableBlocks(doc, { head: said.signHead, right: [], rows: said.signRows.map((who) => [who, '', '']) });
  // what the sheet does not certify stands where it is signed
  flow.put(stacked([stacked([sign.head, ...sign.rows], 0), words(doc, sheet.foot, { size: 9 })]));
  const { count } = doc.bufferedPageRange();
  for (let page = 0; page < count; page++) {
    doc.switchToPage(page);
    running(doc, sheet, page + 1, count, pageSize(paper));
  }
  return { bytes: await finishedPdf(doc), pages: count, lacking };
}

/** A font that cannot be used: which file, for whoever named it. */
export class FontError extends Error {
  readonly file: string;

  constructor(file: string) {
    super(`${file} is no font that can be used (.ttf, .otf)`);
    this.file = file;
  }
}

function loadable(doc: Doc, file: string): void {
  try {
    doc.font(file);
  } catch {
    throw new FontError(file);
  }
}

const numbered = (letter: string): string =>
  `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;

/** Everything on the sheet that came from a recipe or a translation. */
function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(textsOf);
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

/** On every page: whose it is, and which of how many. */
function running(
  doc: Doc,
  { code, words: said }: Sheet,
  page: number,
  pages: number,
  size: { width: number; height: number },
): void {
  const told = said.page.replace('{page}', String(page)).replace('{pages}', String(pages));
  const y = size.height - margins.bottom + 4;
  const width = size.width - 2 * margins.side;
  words(doc, oneLine(doc, code, width - 40), { size: 9 }).paint(margins.side, y, width);
  words(doc, told, { size: 9, align: 'right' }).paint(margins.side, y, width);
}

/** Words of the foot, cut where a line ends. */
function oneLine(doc: Doc, line: string, width: number): string {
  if (lengthOfWords(doc, line, { size: 9 }) <= width) return line;
  // a foot holds fewer: a line of thousands is not measured for each
  const letters = [...line].slice(0, 300);
  while (letters.length > 0 && lengthOfWords(doc, `${letters.join('')}…`, { size: 9 }) > width) letters.pop();
  return `${letters.join('')}…`;
}

function header(doc: Doc, flow: Flow, sheet: Sheet): void {
  const left = stacked([
    words(doc, sheet.title, { size: sheet.title.length > 100 ? 14 : 24, weight: 'bold' }),
    pairs(doc, sheet.identity, 14),
    pairs(doc, sheet.facts, body),
  ]);
  const fields = codeFields(sheet.code);
  const right =
    fields === undefined
      ? words(doc, sheet.words.noCode, { size: small })
      : stacked([codeBlock(doc, fields, 30), words(doc, sheet.code, { size: 8, align: 'center' })]);
  flow.put(
    besides([
      { block: left, share: 5 },
      { block: right, share: 1 },
    ]),
  );
}

const pairs = (doc: Doc, rows: readonly (readonly [string, string])[], size: number): Block =>
  flowing(
    doc,
    rows.map(([what, value]) => ({
      label: `${what}: `,
      ...(value === '' ? { line: 24 } : { value }),
    })),
    size,
  );

function codeBlock(doc: Doc, fields: readonly (readonly boolean[])[], size: number): Block {
  return {
    height: () => size,
    paint: (x, y, width) => {
      doc
        .save()
        .translate(pt(x + (width - size) / 2), pt(y))
        .scale(pt(size) / fields.length);
      doc.path(codePath(fields)).fillColor('black').fill();
      doc.restore();
    },
  };
}

function heading(doc: Doc, flow: Flow, title: string): void {
  const block = words(doc, title, { size: 16, weight: 'bold' });
  flow.head({
    height: (width) => block.height(width) + 4,
    paint: (x, y, width) => {
      block.paint(x, y + 3, width);
      const foot = y + 3.5 + block.height(width);
      doc.undash().lineWidth(pt(0.6)).strokeColor('black');
      doc
        .moveTo(pt(x), pt(foot))
        .lineTo(pt(x + width), pt(foot))
        .stroke();
    },
  });
}

/** A part of the sheet; nothing where it has nothing in it. */
function section(doc: Doc, flow: Flow, title: string, blocks: readonly Block[]): void {
  const real = blocks.filter((block) => block.height(flow.width) > 0);
  if (real.length === 0) return;
  heading(doc, flow, title);
  for (const block of real) flow.put(block);
}

const lines = (doc: Doc, each: readonly string[]): Block[] => each.flatMap((line) => paragraphs(doc, line, true));
