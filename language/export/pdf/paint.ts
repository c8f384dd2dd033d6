import { arrowStrokes } from '../../../calc/drawing/arrow.ts';
import type { Drawing, DrawingLayer, DrawnItem, DrawnLine, DrawnText } from '../../../calc/drawing/drawing.ts';
import { drawingLayers } from '../../../calc/drawing/layers.ts';
import { type Frame, onPaper, pathData } from '../svg-path.ts';
import { type Doc, pt } from './document.ts';
import { hatchLines } from './hatch.ts';
import { lengthOf, type WordsStyle, writeWords } from './words.ts';

/** A box on a page, mm from its upper left corner. */
export interface PageBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PaintOptions {
  /** mm of paper to a mm of the drawing; as large as the box takes, at most 1:1, where nothing is said */
  readonly scale?: number;
  /** least height of capitals, mm of paper: 1.6, read at arm's length; 0 for what is cut 1:1 */
  readonly leastLetters?: number;
  /** layers that are painted; all where nothing is said */
  readonly layers?: readonly DrawingLayer[];
  /** no line is wider, mm of paper */
  readonly widest?: number;
}

export interface Painted {
  readonly scale: number;
  /** a point of the drawing (m) on the page, mm */
  readonly frame: Frame;
}

interface Paint {
  /** mm */
  readonly width: number;
  readonly grey: number;
  readonly dash?: readonly number[];
}

/** Layers differ by stroke, so that a page says the same in black and white. */
const paints: Readonly<Record<DrawingLayer, Paint>> = {
  tool: { width: 0.25, grey: 0.55 },
  zone: { width: 0.25, grey: 0.2, dash: [1.2, 1] },
  flow: { width: 0.6, grey: 0.2 },
  process: { width: 0.3, grey: 0.35, dash: [4, 1.2] },
  coat: { width: 0.25, grey: 0.3 },
  cloth: { width: 0.3, grey: 0.15 },
  core: { width: 0.45, grey: 0.4 },
  insert: { width: 0.45, grey: 0.1 },
  perforation: { width: 0.15, grey: 0.4 },
  outline: { width: 0.55, grey: 0 },
  cut: { width: 0.4, grey: 0 },
  mark: { width: 0.2, grey: 0.3 },
  drill: { width: 0.2, grey: 0.2 },
  dimension: { width: 0.15, grey: 0.3 },
  text: { width: 0.25, grey: 0 },
};

const hiddenEdge: readonly number[] = [2, 1.2];
const grey = (share: number): string => {
  const part = Math.round(share * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${part}${part}${part}`;
};

/** The largest scale at which a drawing fits a box, at most 1:1. */
export function fittingScale({ low, high }: Pick<Drawing, 'low' | 'high'>, { width, height }: PageBox): number {
  const along = (high.x - low.x) * 1000;
  const across = (high.y - low.y) * 1000;
  return Math.min(1, width / Math.max(along, 1e-6), height / Math.max(across, 1e-6));
}

/** Paints a drawing into the middle of a box of the page; nothing of it shows outside. */
export function paintDrawing(doc: Doc, drawing: Drawing, box: PageBox, options: PaintOptions = {}): Painted {
  const { low, high } = drawing;
  const scale = options.scale ?? fittingScale(drawing, box);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const frame: Frame = {
    corner: {
      x: (low.x + high.x) / 2 - middle.x / (1000 * scale),
      y: (low.y + high.y) / 2 + middle.y / (1000 * scale),
    },
    scale: 1000 * scale,
  };
  const { thinnest } = drawing;
  const widest = thinnest === undefined ? undefined : (thinnest * frame.scale) / 3;
  paintItems(doc, drawing.items, frame, box, widest === undefined ? options : { ...options, widest });
  return { scale, frame };
}

/** Paints items in a frame (m to mm of the page), clipped to a box of the page. */
export function paintItems(
  doc: Doc,
  items: readonly DrawnItem[],
  frame: Frame,
  box: PageBox,
  { leastLetters = 1.6, layers = drawingLayers, widest = Infinity }: PaintOptions = {},
): void {
  doc.save();
  doc.rect(pt(box.x), pt(box.y), pt(box.width), pt(box.height)).clip();
  const inOrder = drawingLayers
    .filter((layer) => layers.includes(layer))
    .flatMap((layer) => items.filter((item) => item.layer === layer));
  const named = inOrder.flatMap((item) => (item.kind === 'text' ? [item] : []));
  for (const item of inOrder) if (item.kind !== 'text') paintItem(doc, item, frame, widest);
  // a line that crosses a name is taken from behind it; what is cut 1:1 keeps its lines
  if (leastLetters > 0) for (const name of named) clearBehind(doc, name, frame, leastLetters);
  for (const name of named) paintName(doc, name, frame, leastLetters);
  doc.restore();
}

const styleOf = ({ height, angle, anchor }: DrawnText, frame: Frame, leastLetters: number): WordsStyle => ({
  height: Math.max(height * frame.scale, leastLetters),
  ...(angle === undefined ? {} : { angle }),
  ...(anchor === undefined ? {} : { anchor }),
});

function paintName(doc: Doc, item: DrawnText, frame: Frame, leastLetters: number): void {
  const { x, y } = onPaper(frame, item.at);
  doc.fillColor(grey(paints[item.layer].grey));
  writeWords(doc, item.text, x, y, styleOf(item, frame, leastLetters));
}

/** White where a name will stand, a little larger than it. */
function clearBehind(doc: Doc, item: DrawnText, frame: Frame, leastLetters: number): void {
  const { x, y } = onPaper(frame, item.at);
  const style = styleOf(item, frame, leastLetters);
  const length = lengthOf(doc, item.text, style.height);
  const back = { start: 0, middle: length / 2, end: length }[style.anchor ?? 'start'];
  const around = 0.15 * style.height;
  doc.save().translate(pt(x), pt(y));
  if (style.angle !== undefined) doc.rotate((-style.angle * 180) / Math.PI);
  doc
    .rect(pt(-back - around), pt(-style.height - around), pt(length + 2 * around), pt(style.height + 2 * around))
    .fillColor('white')
    .fill();
  doc.restore();
}

/** The same place in the points of the page. */
const inPoints = ({ corner, scale }: Frame): Frame => ({ corner, scale: pt(scale) });

function paintItem(doc: Doc, item: Exclude<DrawnItem, DrawnText>, frame: Frame, widest: number): void {
  const { width: usual, grey: shade, dash } = paints[item.layer];
  const width = Math.min(usual, widest);
  const pointed = inPoints(frame);
  doc.lineWidth(pt(width)).lineJoin('round').strokeColor(grey(shade)).undash();
  switch (item.kind) {
    case 'line': {
      if (item.hatch !== undefined && item.closed) paintHatch(doc, item, item.hatch, pointed);
      const dashes = item.dashed ? hiddenEdge : dash;
      doc.lineWidth(pt(width));
      if (dashes !== undefined) doc.dash(pt(dashes[0] ?? 1), { space: pt(dashes[1] ?? 1) });
      doc.path(pathData(item.points, item.closed, pointed)).stroke();
      break;
    }
    case 'circle': {
      const { x, y } = onPaper(pointed, item.centre);
      doc.circle(x, y, Math.max(item.radius * pointed.scale, pt(0.1))).stroke();
      break;
    }
    case 'arrow': {
      // A head is seen at any scale: 2 mm of paper at least.
      const longest = Math.max(0.012, 2 / frame.scale);
      for (const stroke of arrowStrokes(item, longest)) doc.path(pathData(stroke, false, pointed)).stroke();
    }
  }
}

/** Strokes along the fibres, inside a closed line. */
function paintHatch(doc: Doc, line: DrawnLine, angle: number, pointed: Frame): void {
  doc.save();
  doc.path(pathData(line.points, true, pointed)).clip();
  doc.lineWidth(pt(0.1));
  for (const stroke of hatchLines(line, angle, pt(2.5) / pointed.scale)) {
    doc.path(pathData(stroke, false, pointed)).stroke();
  }
  doc.restore();
}
