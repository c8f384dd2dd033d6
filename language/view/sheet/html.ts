import type { Drawing } from '../../../calc/drawing/drawing.ts';
import { mark } from '../../export/made-by.ts';
import { xmlText } from '../../export/xml-text.ts';
import type { Blank } from '../../words/sheet-blanks.ts';
import type { Table } from '../report/section.ts';
import { sheetStyle } from './html-style.ts';
import type { Sheet, SheetDrawing, SheetPot, SheetStep, SheetWords } from './sheet.ts';

export interface HtmlOptions {
  readonly paper: 'a4' | 'letter';
  /** BCP 47 */
  readonly language: string;
  /** the code as an SVG element; none for a text that is too long for one */
  code(text: string): string | undefined;
  /** a drawing as an SVG element that fits its box */
  draw(drawing: Drawing): string;
}

/** The sheet as one page of HTML for the screen and for printing: nothing is loaded, nothing runs. */
export function sheetHtml(sheet: Sheet, options: HtmlOptions): string {
  const title = xmlText(sheet.title);
  return [
    `<!DOCTYPE html>`,
    `<!-- ${mark} -->`,
    `<html lang="${xmlText(options.language)}">`,
    `<head><meta charset="utf-8"><title>${title}</title>`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">`,
    `<style>${sheetStyle(options.paper)}</style></head>`,
    `<body>${sheetBody(sheet, options)}</body>`,
    `</html>`,
    ``,
  ].join('\n');
}

/** What stands inside the body: for a page that has a frame of its own. */
export function sheetBody(sheet: Sheet, options: HtmlOptions): string {
  const { words } = sheet;
  return [
    header(sheet, options),
    section(words.begin, [blanks(sheet.blanks), lots(sheet)]),
    section(words.notes, [list(sheet.notes)]),
    section(words.open, [list(sheet.open)]),
    section(
      words.drawings,
      sheet.drawings.map((drawing) => figure(drawing, options)),
    ),
    section(words.cut, [cutList(sheet, options)]),
    section(words.weigh, [table(sheet.weigh)]),
    section(
      words.steps,
      sheet.steps.map((step) => stepBlock(step, words)),
    ),
    section(words.accepted, [list(sheet.accepted)]),
    section(
      words.cautions,
      sheet.hazards.map(
        ({ title, lines }) => `<section class="whole"><h3>${xmlText(title)}</h3>${list(lines)}</section>`,
      ),
    ),
    signOff(words),
    `<p class="foot">${xmlText(sheet.foot)}</p>`,
  ]
    .filter((part) => part !== '')
    .join('\n');
}

function header({ title, code, identity, facts, words }: Sheet, { code: drawn }: HtmlOptions): string {
  const svg = drawn(code);
  const shown = svg === undefined ? `<p>${xmlText(words.noCode)}</p>` : `${svg}<p>${xmlText(code)}</p>`;
  return `<header><div class="code">${shown}</div><h1>${xmlText(title)}</h1>${pairs(identity, 'identity')}${pairs(facts, 'facts')}</header>`;
}

const pairs = (rows: readonly (readonly [string, string])[], name: string): string =>
  `<dl class="${name}">${rows.map(([what, value]) => `<div><dt>${xmlText(what)}</dt><dd>${value === '' ? line() : xmlText(value)}</dd></div>`).join('')}</dl>`;

/** A part of the sheet; nothing where it has nothing in it. */
function section(title: string, parts: readonly string[]): string {
  const inside = parts.filter((part) => part !== '');
  return inside.length === 0 ? '' : `<section><h2>${xmlText(title)}</h2>${inside.join('\n')}</section>`;
}

const list = (lines: readonly string[]): string =>
  lines.length === 0 ? '' : `<ul>${lines.map((each) => `<li>${xmlText(each)}</li>`).join('')}</ul>`;

function table(
  { head, right, rows, boxes }: Table,
  pictures?: { readonly head: string; readonly of: readonly string[] },
): string {
  if (rows.length === 0) return '';
  const cell = (name: string, i: number, words: string): string =>
    `<${name}${right.includes(i) ? ' class="number"' : ''}>${xmlText(words)}</${name}>`;
  const lines = rows.map(
    (row, r) =>
      `<tr>${row
        .map((words, i) =>
          boxes !== undefined && i === row.length - 1 ? `<td>${ticks(boxes[r] ?? 0)}</td>` : cell('td', i, words),
        )
        .join('')}${pictures === undefined ? '' : `<td>${pictures.of[r] ?? ''}</td>`}</tr>`,
  );
  const titles =
    head.map((words, i) => cell('th', i, words)).join('') +
    (pictures === undefined ? '' : `<th>${xmlText(pictures.head)}</th>`);
  return `<table><thead><tr>${titles}</tr></thead><tbody>${lines.join('')}</tbody></table>`;
}

const ticks = (count: number): string => '<span class="box small"></span> '.repeat(count).trim();

function cutList({ cut, words }: Sheet, { draw }: HtmlOptions): string {
  const rows = cut.rows.map(({ cells }) => cells);
  const sketches = cut.rows.map(({ sketch }) => (sketch === undefined ? '' : draw(sketch)));
  return table(
    { head: cut.head, right: [3, 4, 5], rows },
    sketches.some((each) => each !== '') ? { head: words.sketch, of: sketches } : undefined,
  );
}

const figure = ({ title, note, drawing }: SheetDrawing, { draw }: HtmlOptions): string =>
  `<figure class="whole">${draw(drawing)}<figcaption>${xmlText(title)}. ${xmlText(note)}</figcaption></figure>`;

const line = (): string => '<span class="line"></span>';

function blanks(each: readonly Blank[]): string {
  if (each.length === 0) return '';
  const drawn = each.map(({ label, unit, box }) =>
    box
      ? `<span class="blank"><span class="box small"></span> ${xmlText(label)}</span>`
      : `<span class="blank">${xmlText(label)} ${line()}${unit === undefined ? '' : ` ${xmlText(unit)}`}</span>`,
  );
  return `<p class="blanks">${drawn.join(' ')}</p>`;
}

function lots({ lots: names, words }: Sheet): string {
  return table({ head: words.lots, right: [], rows: names.map((name) => [name, '', '']) });
}

function potBlock({ title, table: rows, log, notes }: SheetPot): string {
  const said = notes.map((note) => `<p>${xmlText(note)}</p>`).join('');
  return `<div class="pot"><h4>${xmlText(title)}</h4>${table(rows)}${said}${log === undefined ? '' : table(log)}</div>`;
}

/** A step is never broken over two pages. */
function stepBlock(step: SheetStep, words: SheetWords): string {
  const cautions =
    step.cautions.length === 0
      ? ''
      : `<div class="caution"><strong>${xmlText(words.caution)}.</strong> ${step.cautions.map(xmlText).join(' ')}</div>`;
  return [
    `<section class="step whole"><div class="box"></div><div class="number">${xmlText(step.number)}</div><div class="body">`,
    `<h3>${xmlText(step.what)}</h3>`,
    step.says.length === 0 ? '' : `<p class="says">${xmlText(step.says.join('; '))}</p>`,
    step.takes === '' ? '' : `<p>${xmlText(step.takes)}</p>`,
    cautions,
    ...step.notes.map((note) => `<p class="note">${xmlText(note)}</p>`),
    step.pieces === undefined ? '' : table(step.pieces),
    ...step.pots.map(potBlock),
    ...step.accepted.map((reason) => `<p>${xmlText(words.accepts)} ${xmlText(reason)}</p>`),
    step.readings === undefined ? '' : table(step.readings),
    blanks(step.blanks),
    step.why === '' ? '' : `<p class="why">${xmlText(step.why)}</p>`,
    `</div></section>`,
  ].join('');
}

function signOff({ signOff: title, signHead, signRows }: SheetWords): string {
  const rows = signRows.map((who) => [who, '', '']);
  return section(title, [`<div class="whole">${table({ head: signHead, right: [], rows })}</div>`]);
}
