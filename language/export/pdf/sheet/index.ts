import type { Sheet, SheetPot, SheetStep, SheetWords } from '../../../view/sheet/sheet.ts';
import type { Blank } from '../../../words/sheet-blanks.ts';
import { codeFields, codePath } from '../../code.ts';
import { type Doc, finishedPdf, newPdf, type PaperName, pageSize, pt } from '../document.ts';
import { type FontFiles, useFonts } from '../fonts.ts';
import type { MadePdf } from '../tiled.ts';
import { lackingLetters } from '../words.ts';
import { type Block, barred, besides, drawn, framed, gap, lengthOfWords, stacked, tickBox, words } from './blocks.ts';
import { Flow } from './flow.ts';
import { tableBlocks } from './tables.ts';

export interface SheetPdfOptions {
  readonly paper: PaperName;
  /** other fonts, for letters that ours lack */
  readonly fonts?: FontFiles;
}

const body = 12;
const small = 10;
const margins = { side: 14, top: 16, bottom: 16 };

/** The sheet as a PDF: upright, black on white, 12 pt; a step and all that it needs stand on one page. */
export async function sheetPdf(sheet: Sheet, { paper, fonts }: SheetPdfOptions): Promise<MadePdf> {
  const doc = newPdf(`${sheet.title} (${sheet.code})`, { bufferPages: true });
  if (fonts !== undefined) useFonts(doc, fonts);
  const lacking = lackingLetters(doc, textsOf(sheet));
  const flow = new Flow(doc, pageSize(paper), margins);
  const { words: said } = sheet;
  header(doc, flow, sheet);
  if (lacking.length > 0)
    flow.put(
      framed(
        doc,
        words(doc, said.lacking.replace('{letters}', lacking.map(numbered).join(', ')), { size: small }),
        0.4,
      ),
    );
  section(doc, flow, said.begin, [blanks(doc, sheet.blanks)]);
  flow.table(tableBlocks(doc, { head: said.lots, right: [], rows: sheet.lots.map((name) => [name, '', '']) }));
  section(doc, flow, said.notes, lines(doc, sheet.notes));
  section(doc, flow, said.open, lines(doc, sheet.open));
  section(
    doc,
    flow,
    said.drawings,
    sheet.drawings.map(({ title, note, drawing }) =>
      stacked([drawn(doc, drawing, 110), words(doc, `${title}. ${note}`, { size: small })]),
    ),
  );
  heading(doc, flow, said.cut);
  const sketches = sheet.cut.rows.map(({ sketch }) => sketch);
  flow.table(
    tableBlocks(
      doc,
      { head: sheet.cut.head, right: [3, 4, 5], rows: sheet.cut.rows.map(({ cells }) => cells) },
      sketches.some((each) => each !== undefined) ? sketches : undefined,
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
  flow.put(stacked([sign.head, ...sign.rows], 0));
  flow.put(words(doc, sheet.foot, { size: 9 }));
  const { count } = doc.bufferedPageRange();
  for (let page = 0; page < count; page++) {
    doc.switchToPage(page);
    running(doc, sheet, page + 1, count, pageSize(paper));
  }
  return { bytes: await finishedPdf(doc), pages: count, lacking };
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
  words(doc, code, { size: 9 }).paint(margins.side, y, width);
  words(doc, told, { size: 9, align: 'right' }).paint(margins.side, y, width);
}

function header(doc: Doc, flow: Flow, sheet: Sheet): void {
  const left = stacked([
    words(doc, sheet.title, { size: 24, weight: 'bold' }),
    pairs(doc, sheet.identity, 14),
    pairs(doc, sheet.facts, body),
  ]);
  const right = stacked([codeBlock(doc, sheet.code, 30), words(doc, sheet.code, { size: 7, align: 'center' })]);
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

interface Piece {
  readonly label: string;
  readonly value?: string;
  /** mm to write on */
  readonly line?: number;
  readonly box?: boolean;
  readonly unit?: string;
}

/** Labelled values and blanks one after another, over as many lines as they need; none is broken. */
function flowing(doc: Doc, pieces: readonly Piece[], size: number): Block {
  const high = Math.max(size * 0.55, pieces.some(({ line, box }) => line !== undefined || box) ? 8 : 0);
  const lengthOf = ({ label, value, line, box, unit }: Piece): number =>
    (box ? 7 : 0) +
    lengthOfWords(doc, label, { size }) +
    (value === undefined ? 0 : lengthOfWords(doc, value, { size, weight: 'bold' })) +
    (line ?? 0) +
    (unit === undefined ? 0 : 1 + lengthOfWords(doc, unit, { size }));
  const placed = (width: number) => {
    let [x, row] = [0, 0];
    return pieces.map((piece) => {
      const long = lengthOf(piece);
      if (x > 0 && x + long > width) [x, row] = [0, row + 1];
      const at = { piece, x, y: row * high };
      x += long + 5;
      return at;
    });
  };
  return {
    height: (width) => (pieces.length === 0 ? 0 : (placed(width).at(-1)?.y ?? 0) + high),
    paint: (x, y, width) => {
      for (const { piece, x: dx, y: dy } of placed(width)) paintPiece(doc, piece, x + dx, y + dy, high, size);
    },
  };
}

function paintPiece(
  doc: Doc,
  { label, value, line, box, unit }: Piece,
  x: number,
  y: number,
  high: number,
  size: number,
): void {
  let at = x;
  const base = y + (high - size * 0.42) / 2;
  if (box) {
    tickBox(doc, 5).paint(at, y + (high - 5) / 2, 5);
    at += 7;
  }
  words(doc, label, { size }).paint(at, base, 400);
  at += lengthOfWords(doc, label, { size });
  if (value !== undefined) {
    words(doc, value, { size, weight: 'bold' }).paint(at, base, 400);
    at += lengthOfWords(doc, value, { size, weight: 'bold' });
  }
  if (line !== undefined) {
    const foot = base + size * 0.4;
    doc.undash().lineWidth(pt(0.3)).strokeColor('black');
    doc
      .moveTo(pt(at), pt(foot))
      .lineTo(pt(at + line), pt(foot))
      .stroke();
    at += line;
  }
  if (unit !== undefined) words(doc, unit, { size }).paint(at + 1, base, 400);
}

const blanks = (doc: Doc, each: readonly Blank[]): Block =>
  flowing(
    doc,
    each.map(({ label, unit, box }) =>
      box ? { label, box: true } : { label: `${label} `, line: 24, ...(unit === undefined ? {} : { unit }) },
    ),
    body,
  );

function codeBlock(doc: Doc, text: string, size: number): Block {
  const fields = codeFields(text);
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

const lines = (doc: Doc, each: readonly string[]): Block[] =>
  each.map((line) => barred(doc, words(doc, line, { size: body }), 0.5));

function potBlock(doc: Doc, { title, table, notes }: SheetPot): Block {
  const { head, rows } = tableBlocks(doc, table);
  return framed(
    doc,
    stacked([
      words(doc, title, { size: body, weight: 'bold' }),
      stacked([head, ...rows], 0),
      ...notes.map((note) => words(doc, note, { size: small })),
    ]),
    0.3,
  );
}

/** What stands beside the box and the number of a step. */
function stepParts(doc: Doc, step: SheetStep, said: SheetWords): Block[] {
  const pieces = step.pieces === undefined ? undefined : tableBlocks(doc, step.pieces);
  return [
    words(doc, step.what, { size: 14, weight: 'bold' }),
    ...(step.says.length === 0 ? [] : [words(doc, step.says.join('; '), { size: body })]),
    ...(step.takes === '' ? [] : [words(doc, step.takes, { size: small })]),
    ...(step.cautions.length === 0
      ? []
      : [framed(doc, words(doc, `${said.caution}. ${step.cautions.join(' ')}`, { size: 11, weight: 'bold' }), 0.8)]),
    ...step.notes.map((note) => barred(doc, words(doc, note, { size: body }))),
    ...(pieces === undefined ? [] : [stacked([pieces.head, ...pieces.rows], 0)]),
    ...step.pots.map((pot) => potBlock(doc, pot)),
    ...(step.blanks.length === 0 ? [] : [blanks(doc, step.blanks)]),
    ...(step.why === '' ? [] : [words(doc, step.why, { size: 9 })]),
  ];
}

const indent = 28;

function stepBlock(doc: Doc, number: string, parts: readonly Block[], box: boolean): Block {
  const inside = stacked(parts, 1.2);
  return {
    height: (width) => Math.max(inside.height(width - indent), 9) + 4,
    paint: (x, y, width) => {
      doc.undash().lineWidth(pt(0.3)).strokeColor('black');
      doc
        .moveTo(pt(x), pt(y))
        .lineTo(pt(x + width), pt(y))
        .stroke();
      if (box) tickBox(doc, 8).paint(x + 0.5, y + 2, 8);
      words(doc, number, { size: 15, weight: 'bold' }).paint(x + 11, y + 2.5, indent - 12);
      inside.paint(x + indent, y + 2, width - indent);
    },
  };
}

/** A step stands whole on a page; one that no page could hold goes on overleaf under its number, its cautions with it. */
function putStep(doc: Doc, flow: Flow, step: SheetStep, said: SheetWords): void {
  const parts = stepParts(doc, step, said);
  const whole = stepBlock(doc, step.number, parts, true);
  if (whole.height(flow.width) <= flow.room) {
    flow.put(whole, 0.5);
    return;
  }
  let part: Block[] = [];
  let first = true;
  const number = () => (first ? step.number : `${step.number} ${said.continued}`);
  for (const next of parts) {
    const more = stepBlock(doc, number(), [...part, next], first);
    if (part.length > 0 && more.height(flow.width) > flow.room - 10) {
      flow.put(stepBlock(doc, number(), part, first), 0.5);
      first = false;
      part = [gap(1), next];
    } else part.push(next);
  }
  flow.put(stepBlock(doc, number(), part, first), 0.5);
}
