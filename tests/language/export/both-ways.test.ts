/** Words from right to left in a PDF: against Unicode Standard Annex #9, and against how another library sets the same line. */
import { createRequire } from 'node:module';
import path from 'node:path';
import { createCanvas, GlobalFonts, type SKRSContext2D } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { levelsOf, runsOf } from '../../../language/export/pdf/bidi.ts';
import { addPage, finishedPdf, newPdf } from '../../../language/export/pdf/document.ts';
import { words } from '../../../language/export/pdf/sheet/blocks.ts';
import { writeWords } from '../../../language/export/pdf/words.ts';

/** Capitals stand for Hebrew letters, as in the annex. */
const hebrew = (text: string): string =>
  text.replace(/[A-Z]/g, (a) => String.fromCharCode(0x05d0 + a.charCodeAt(0) - 65));
const latin = (text: string): string =>
  text.replace(/[\u05d0-\u05e9]/g, (a) => String.fromCharCode(65 + a.charCodeAt(0) - 0x05d0));

/** The line as the eye reads it from left to right. */
function seen(text: string): string {
  const letters = [...hebrew(text)];
  const runs = runsOf(letters, levelsOf(letters));
  return latin(runs.map(({ letters: own, leftwards }) => (leftwards ? [...own].reverse() : own).join('')).join(''));
}

describe('the order on a line', () => {
  it.each([
    // UAX #9, section 3.4, the first example of rule L2
    ['car means CAR.', 'car means RAC.'],
    // P2 and P3: the first letter says where the line begins; N2: its full stop stands at its end
    ['CAR MEANS car.', '.car SNAEM RAC'],
    // W4, W5: a number keeps its order, its comma and its sign of degrees
    ['CAR 1,250%', '1,250% RAC'],
    ['CAR 20° B', 'B 20° RAC'],
    // N0, the annex's example: brackets go with the paragraph where a letter of it stands in them
    ['AB(CD[&ef]!)gh', 'gh(![ef&]DC)BA'],
    ['smith (fabrikam ABC) IJ', 'smith (fabrikam CBA) JI'],
    // L1: blanks at the end stay there
    ['CAR  ', '  RAC'],
  ])('%s', (text, line) => expect(seen(text)).toBe(line));

  it('a line from left to right stays as it is', () => {
    expect(seen('hatch_lid (r6), 20 °C')).toBe('hatch_lid (r6), 20 °C');
  });
});

const font = path.join(
  path.dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')),
  'ttf/DejaVuSans.ttf',
);
const points = 40;
/** DejaVu Sans: capitals are 1493 of 2048 units high */
const capitals = 1493 / 2048;

type Picture = { readonly context: SKRSContext2D; readonly width: number; readonly height: number };

/** Ink in each column, from the first to the last that has any. */
function columns({ context, width, height }: Picture): number[] {
  const { data } = context.getImageData(0, 0, width, height);
  const sums = Array.from({ length: width }, (_, x) => {
    let sum = 0;
    for (let y = 0; y < height; y++) sum += 255 - (data[4 * (y * width + x)] ?? 255);
    return sum;
  });
  return sums.slice(
    sums.findIndex((sum) => sum > 0),
    sums.findLastIndex((sum) => sum > 0) + 1,
  );
}

async function inPdf(text: string): Promise<number[]> {
  const doc = newPdf('line');
  addPage(doc, { width: 250, height: 30 });
  doc.fillColor('black');
  writeWords(doc, text, 5, 20, { height: ((points * capitals) / 72) * 25.4 });
  const task = getDocument({ data: new Uint8Array(await finishedPdf(doc)), useSystemFonts: false, verbosity: 0 });
  const page = await (await task.promise).getPage(1);
  const viewport = page.getViewport({ scale: 1 });
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
  const canvas = createCanvas(width, height);
  await page.render({ canvas: canvas as unknown as HTMLCanvasElement, viewport }).promise;
  await task.destroy();
  return columns({ context: canvas.getContext('2d'), width, height });
}

function onCanvas(text: string, direction: 'ltr' | 'rtl'): number[] {
  const [width, height] = [720, 90];
  const context = createCanvas(width, height).getContext('2d');
  context.fillStyle = 'white';
  context.fillRect(0, 0, width, height);
  context.fillStyle = 'black';
  context.font = `${points}px "Test Sans"`;
  context.direction = direction;
  context.textAlign = 'left';
  context.fillText(text, 14, 60);
  return columns({ context, width, height });
}

/** How alike the ink of two lines lies: 1 where it is the same. */
function alike(a: readonly number[], b: readonly number[]): number {
  const length = Math.max(a.length, b.length);
  // a column of anti-aliasing more or less moves nothing
  const blurred = (list: readonly number[], i: number): number =>
    [-2, -1, 0, 1, 2].reduce((sum, d) => sum + (list[i + d] ?? 0), 0);
  const pairs = Array.from({ length }, (_, i) => [blurred(a, i), blurred(b, i)] as const);
  const mean = (k: 0 | 1): number => pairs.reduce((sum, pair) => sum + pair[k], 0) / length;
  const [ma, mb] = [mean(0), mean(1)];
  const sum = (of: (x: number, y: number) => number): number =>
    pairs.reduce((all, [x, y]) => all + of(x - ma, y - mb), 0);
  return sum((x, y) => x * y) / Math.sqrt(sum((x) => x * x) * sum((_, y) => y * y));
}

describe('a line of the PDF looks as another library sets it', () => {
  beforeAll(() => void GlobalFonts.registerFromPath(font, 'Test Sans'));

  it.each([
    ['שלום עולם', 'rtl'],
    ['מכסה תא (גרסה 6) 31', 'rtl'],
    ['hatch_lid מכסה תא 20 °C', 'ltr'],
    ['غطاء الفتحة', 'rtl'],
    ['غطاء الفتحة 12,5 kg (r6)', 'rtl'],
    ['lid غطاء الفتحة: 3', 'ltr'],
    ['٣١ قطعة', 'rtl'],
  ] as const)('%s', async (text, direction) => {
    const [ours, theirs] = [await inPdf(text), onCanvas(text, direction)];
    expect(Math.abs(ours.length - theirs.length)).toBeLessThan(5);
    expect(alike(ours, theirs)).toBeGreaterThan(0.9);
    // the same letters from the other side are told apart
    expect(alike(ours, [...theirs].reverse())).toBeLessThan(0.9);
  });
});

it('breaks a long line of both directions where the words end, the first words on the first line', async () => {
  const doc = newPdf('lines');
  addPage(doc, { width: 100, height: 100 });
  const text = 'מכסה תא הטייס עם שני צירים ומנעול אחד, 720 mm × 520 mm, נבנה ביום רביעי';
  const block = words(doc, text, { size: 12 });
  const one = words(doc, 'א', { size: 12 }).height(80);
  expect(block.height(60) / one).toBeGreaterThan(2);
  expect(Number((block.height(60) / one).toFixed(6)) % 1).toBe(0);
  expect(block.height(1000)).toBeCloseTo(one, 6);
  block.paint(5, 5, 60);
  const task = getDocument({ data: new Uint8Array(await finishedPdf(doc)), useSystemFonts: false, verbosity: 0 });
  const content = await (await (await task.promise).getPage(1)).getTextContent();
  const items = content.items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
  const top = Math.max(...items.map(({ transform }) => Number(transform[5])));
  const first = items.filter(({ transform }) => Number(transform[5]) === top).map(({ str }) => str);
  expect(first.join(' ')).toContain('מכסה');
  expect(items.every(({ transform, width }) => Number(transform[4]) + width < (65.5 * 72) / 25.4)).toBe(true);
  await task.destroy();
});
