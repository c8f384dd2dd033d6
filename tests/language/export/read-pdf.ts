/** PDF files as another library reads and paints them. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { root } from '../../harness/sources.ts';

export interface PdfWords {
  readonly text: string;
  /** points from the lower left corner */
  readonly x: number;
  readonly y: number;
  /** points, of the font */
  readonly size: number;
}

export interface PdfPage {
  /** points */
  readonly width: number;
  readonly height: number;
  readonly words: readonly PdfWords[];
  /** straight strokes of single lines, points from the lower left corner */
  readonly lines: readonly { readonly from: readonly [number, number]; readonly to: readonly [number, number] }[];
}

export interface ReadPdf {
  readonly pages: readonly PdfPage[];
  readonly info: Readonly<Record<string, unknown>>;
  readonly fonts: readonly string[];
  readonly preferences: unknown;
}

/** Reads a PDF; with a name, paints its pages into tests/out/NAME-PAGE.png too. */
export async function readPdf(bytes: Uint8Array, name?: string, resolution = 60): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 });
  const file = await task.promise;
  const pages: PdfPage[] = [];
  const fonts = new Set<string>();
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const content = await page.getTextContent();
    const words = content.items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              x: Number(item.transform[4]),
              y: Number(item.transform[5]),
              size: Math.hypot(Number(item.transform[2]), Number(item.transform[3])),
            },
          ]
        : [],
    );
    const operators = await page.getOperatorList();
    operators.fnArray.forEach((operator, i) => {
      if (operator === OPS.setFont) {
        const font: { readonly name?: string } = page.commonObjs.get(operators.argsArray[i][0]);
        fonts.add(font.name ?? '');
      }
    });
    pages.push({ width, height, words, lines: linesOf(operators) });
    if (name !== undefined) {
      const viewport = page.getViewport({ scale: resolution / 72 });
      const canvas = createCanvas(Math.ceil(viewport.width), Math.ceil(viewport.height));
      await page.render({ canvas: canvas as unknown as HTMLCanvasElement, viewport }).promise;
      const folder = path.join(root, 'tests/out/pdf');
      mkdirSync(folder, { recursive: true });
      writeFileSync(path.join(folder, `${name}-${number}.png`), canvas.toBuffer('image/png'));
    }
  }
  const { info } = await file.getMetadata();
  const preferences = await file.getViewerPreferences();
  await task.destroy();
  return { pages, info: info as Readonly<Record<string, unknown>>, fonts: [...fonts], preferences };
}

type Matrix = readonly [number, number, number, number, number, number];

/** The strokes of one straight line each, with the transformations round them worked in. */
function linesOf({
  fnArray,
  argsArray,
}: {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}) {
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  const found: PdfPage['lines'][number][] = [];
  fnArray.forEach((operator, i) => {
    if (operator === OPS.save) kept.push(matrix);
    else if (operator === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = times(matrix, argsArray[i] as Matrix);
    else if (operator === OPS.constructPath) {
      const [, [data]] = argsArray[i] as [number, [Float32Array | null]];
      if (data?.length === 6 && data[0] === 0 && data[3] === 1) {
        const [, x = 0, y = 0, , toX = 0, toY = 0] = data;
        found.push({ from: mapped(matrix, x, y), to: mapped(matrix, toX, toY) });
      }
    }
  });
  return found;
}

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

const mapped = (m: Matrix, x: number, y: number): readonly [number, number] => [
  m[0] * x + m[2] * y + m[4],
  m[1] * x + m[3] * y + m[5],
];
