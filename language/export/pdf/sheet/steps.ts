import type { SheetPot, SheetStep, SheetWords } from '../../../view/sheet/sheet.ts';
import { type Doc, pt } from '../document.ts';
import { type Block, barred, framed, stacked, tickBox, words } from './blocks.ts';
import type { Flow } from './flow.ts';
import { blankLines } from './labelled.ts';
import { tableBlocks } from './tables.ts';

const body = 12;
const small = 10;
/** mm beside the box and the number */
const indent = 28;

/** A step stands whole on a page; one that no page could hold goes on overleaf under its number, its cautions with it. */
export function putStep(doc: Doc, flow: Flow, step: SheetStep, said: SheetWords): void {
  const head = headParts(doc, step, said);
  const parts = [
    ...head,
    ...bodyParts(doc, step, said).map(({ head: above, rows }) => stacked([...above, ...rows], 0)),
  ];
  const whole = stepBlock(doc, step.number, parts);
  if (whole.height(flow.width) <= flow.room) flow.put(whole, 0.5);
  else putInPieces(doc, flow, step, said);
}

function putInPieces(doc: Doc, flow: Flow, step: SheetStep, said: SheetWords): void {
  const width = flow.width - indent;
  const head = headParts(doc, step, said);
  const room = flow.room - 10 - stacked(head, between).height(width);
  let first = true;
  let page: Block[] = [];
  const block = (more: readonly Block[]): Block =>
    stepBlock(doc, step.number, [...head, ...more], first ? undefined : said.continued);
  const turn = (): void => {
    if (page.length > 0) {
      flow.put(block(page), 0.5);
      first = false;
    }
    page = [];
  };
  for (const { head: above, rows } of bodyParts(doc, step, said)) {
    let fitting: Block[] = [];
    for (const row of rows) {
      const taken = stacked([...page, stacked([...above, ...fitting, row], 0)], between).height(width);
      if (taken > room && (page.length > 0 || fitting.length > 0)) {
        if (fitting.length > 0) page.push(stacked([...above, ...fitting], 0));
        fitting = [];
        turn();
      }
      fitting.push(row);
    }
    if (fitting.length > 0) page.push(stacked([...above, ...fitting], 0));
  }
  turn();
}

const between = 1.2;
/** letters of a step that stand in bold; more of them are told below */
const longest = 300;

/** What stands on every page that a step takes: what to do, and what can hurt. */
function headParts(doc: Doc, { what, cautions }: SheetStep, said: SheetWords): Block[] {
  return [
    words(doc, what.length > longest ? `${what.slice(0, longest)}…` : what, { size: 14, weight: 'bold' }),
    ...(cautions.length === 0
      ? []
      : [framed(doc, words(doc, `${said.caution}. ${cautions.join(' ')}`, { size: 11, weight: 'bold' }), 0.8)]),
  ];
}

/** Rows that may be parted, below a head that is repeated where they are. */
interface Part {
  readonly head: readonly Block[];
  readonly rows: readonly Block[];
}

const single = (block: Block): Part => ({ head: [], rows: [block] });

function bodyParts(doc: Doc, step: SheetStep, said: SheetWords): Part[] {
  const table = (given: SheetStep['pieces']): Part[] => {
    if (given === undefined) return [];
    const { head, rows } = tableBlocks(doc, given);
    return [{ head: [head], rows }];
  };
  const lines = (given: readonly string[], bar: boolean, size = bar ? body : small): Part[] =>
    given.map((each) => ({ head: [], rows: paragraphs(doc, each, bar, size) }));
  return [
    ...(step.what.length > longest ? lines([step.what], false) : []),
    ...lines(step.says.length === 0 ? [] : [step.says.join('; ')], false, body),
    ...lines(
      [step.takes].filter((each) => each !== ''),
      false,
    ),
    ...lines(step.notes, true),
    ...lines(
      step.accepted.map((each) => `${said.accepts} ${each}`),
      false,
    ),
    ...table(step.pieces),
    ...step.pots.flatMap((pot) => [single(potBlock(doc, pot)), ...table(pot.log)]),
    ...table(step.readings),
    ...(step.blanks.length === 0 ? [] : [single(blankLines(doc, step.blanks, body))]),
    ...(step.why === '' ? [] : [single(words(doc, step.why, { size: 9 }))]),
  ];
}

/** mm that a note may be high in one piece: the least that is left beside a step's head */
const noteRoom = 60;

/** Words in pieces that a page holds, parted between words. */
export function paragraphs(doc: Doc, text: string, bar: boolean, size = body, width = 150): Block[] {
  const block = (part: string): Block => {
    const set = words(doc, part, { size });
    return bar ? barred(doc, set) : set;
  };
  if (block(text).height(width) <= noteRoom) return [block(text)];
  const found: Block[] = [];
  let line = '';
  for (const word of text.split(/(?<=\s)/)) {
    if (line !== '' && block(line + word).height(width) > noteRoom) {
      found.push(block(line.trim()));
      line = '';
    }
    line += word;
  }
  return [...found, block(line.trim())];
}

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

function stepBlock(doc: Doc, number: string, parts: readonly Block[], continued?: string): Block {
  const inside = stacked(parts, between);
  return {
    height: (width) => Math.max(inside.height(width - indent), 9) + 4,
    paint: (x, y, width) => {
      doc.undash().lineWidth(pt(0.3)).strokeColor('black');
      doc
        .moveTo(pt(x), pt(y))
        .lineTo(pt(x + width), pt(y))
        .stroke();
      if (continued === undefined) tickBox(doc, 8).paint(x + 0.5, y + 2, 8);
      else words(doc, continued, { size: 9 }).paint(x, y + 9.5, indent - 1);
      words(doc, number, { size: 15, weight: 'bold' }).paint(x + 11, y + 2.5, indent - 12);
      inside.paint(x + indent, y + 2, width - indent);
    },
  };
}
