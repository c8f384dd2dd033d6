import type { Drawing } from '../../../calc/drawing/drawing.ts';
import { say } from '../../view/text.ts';
import { addPage, finishedPdf, newPdf, type PaperName, pageSize } from './document.ts';
import { scaleBar } from './marks.ts';
import { fittingScale, type PageBox, paintDrawing } from './paint.ts';
import type { MadePdf } from './tiled.ts';
import { lackingLetters, writeWords } from './words.ts';

/** Scales that a rule for drawings has, and their likes (ISO 5455): 1 to so much. */
const usual = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

export interface OnePageOptions {
  readonly paper: PaperName;
  /** as large as the page takes (`fit`), or the largest usual scale that the page takes; a number is mm of paper to a mm */
  readonly scale?: 'fit' | 'usual' | number;
}

/** A drawing on one page, with its title, its scale, and a bar of 100 mm of paper. */
export async function drawingPdf(drawing: Drawing, { paper, scale = 'usual' }: OnePageOptions): Promise<MadePdf> {
  const { low, high } = drawing;
  const page = pageSize(paper, high.x - low.x > high.y - low.y);
  const doc = newPdf(drawing.title);
  const lacking = lackingLetters(doc, [
    drawing.title,
    ...drawing.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
  ]);
  addPage(doc, page);
  const box: PageBox = { x: 12, y: 20, width: page.width - 24, height: page.height - 42 };
  const fit = fittingScale(drawing, box);
  const chosen = scale === 'fit' ? fit : scale === 'usual' ? usualScale(fit) : scale;
  doc.fillColor('black');
  writeWords(doc, drawing.title, box.x, 14, { height: 3.6, weight: 'bold', most: box.width - 50 });
  const told = say('scale 1:{scale}', { scale: Number((1 / chosen).toPrecision(3)) });
  writeWords(doc, told, page.width - 12, 14, { height: 2.6, anchor: 'end', most: 48 });
  paintDrawing(doc, drawing, box, { scale: chosen });
  scaleBar(doc, box.x, page.height - 12, say('100 mm of paper'));
  writeWords(doc, seenWords(drawing), page.width - 12, page.height - 12, { height: 2.2, anchor: 'end', most: 60 });
  return { bytes: await finishedPdf(doc), pages: 1, lacking };
}

/** The largest usual scale that is no larger than what fits. */
export const usualScale = (fit: number): number => 1 / (usual.find((each) => 1 / each <= fit + 1e-9) ?? 1 / fit);

function seenWords({ seenFrom }: Drawing): string {
  if (seenFrom === 'edge') return say('seen from the edge');
  return seenFrom === 'bag side' ? say('seen from the bag side') : say('seen from the tool side');
}
