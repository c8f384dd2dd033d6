import { arrowStrokes } from '../../calc/drawing/arrow.ts';
import type { Drawing, DrawingLayer, DrawnItem, DrawnLine } from '../../calc/drawing/drawing.ts';
import { byLayer } from '../../calc/drawing/layers.ts';
import { capitalHeight } from './letters.ts';
import { mark } from './made-by.ts';
import { written } from './numbers.ts';
import { type Frame, onPaper, pathData } from './svg-path.ts';
import { xmlText } from './xml-text.ts';

const namespaces = 'xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"';

/** Room round a drawing for cutters, mm: a line on the very edge of the page is clipped by some programs. */
const room = 5;

/** mm of a line that has no breadth to a cutter, and is seen by the eye */
const hairline = '0.1';

/** Colours by which programs of cutters tell layers apart, beside their names. */
const cutterColours: Partial<Record<DrawingLayer, string>> = { cut: '#ff0000', mark: '#0000ff', drill: '#008000' };

/**
 * A drawing for a cutter (SVG 1.1): 1:1 in millimetres, a group for each layer with its name as id and label, hairlines,
 * arcs as arcs.
 */
export function cutSvg(drawing: Drawing): string {
  const { size, frame } = frameOf(drawing, room);
  const groups = byLayer(drawing.items).map(([layer, items]) => {
    const colour = cutterColours[layer] ?? '#000000';
    const paint = `fill="none" stroke="${colour}" stroke-width="${hairline}"`;
    const body = items.map((item) => cutItem(item, frame, colour)).join('\n');
    return `<g id="${layer}" inkscape:groupmode="layer" inkscape:label="${layer}" ${paint}>\n${body}\n</g>`;
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<!-- ${mark} -->`,
    `<svg ${namespaces} version="1.1" width="${size.width}mm" height="${size.height}mm" viewBox="0 0 ${size.width} ${size.height}">`,
    `<title>${xmlText(drawing.title)}</title>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

function frameOf({ low, high }: Drawing, around: number) {
  const frame: Frame = { corner: { x: low.x - around / 1000, y: high.y + around / 1000 }, scale: 1000 };
  const size = {
    width: written((high.x - low.x) * 1000 + 2 * around),
    height: written((high.y - low.y) * 1000 + 2 * around),
  };
  return { frame, size };
}

function cutItem(item: DrawnItem, frame: Frame, colour: string): string {
  if (item.kind === 'text') return textElement(item, frame, `fill="${colour}" stroke="none"`);
  return shapeElement(item, frame, item.kind === 'line' && item.dashed ? ' stroke-dasharray="4 2"' : '');
}

/** A line, circle or arrow; `more` are further attributes, each with a blank before it. */
function shapeElement(item: Exclude<DrawnItem, { kind: 'text' }>, frame: Frame, more: string): string {
  switch (item.kind) {
    case 'line':
      return `<path d="${pathData(item.points, item.closed, frame)}"${more}/>`;
    case 'circle': {
      const { x, y } = onPaper(frame, item.centre);
      return `<circle cx="${written(x)}" cy="${written(y)}" r="${written(item.radius * frame.scale)}"${more}/>`;
    }
    case 'arrow': {
      const data = arrowStrokes(item).map((stroke) => pathData(stroke, false, frame));
      return `<path d="${data.join('')}"${more}/>`;
    }
  }
}

function textElement(item: Extract<DrawnItem, { kind: 'text' }>, frame: Frame, paint: string): string {
  const { x, y } = onPaper(frame, item.at);
  const place =
    item.angle === undefined || item.angle === 0
      ? `x="${written(x)}" y="${written(y)}"`
      : `transform="translate(${written(x)} ${written(y)}) rotate(${written((-item.angle * 180) / Math.PI)})"`;
  const anchor = item.anchor === undefined || item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`;
  const size = written((item.height / capitalHeight) * frame.scale);
  return `<text ${place} font-family="DejaVu Sans, Verdana, sans-serif" font-size="${size}"${anchor} ${paint}>${xmlText(item.text)}</text>`;
}

export interface ScreenOptions {
  /** begins the ids of hatches, so that two drawings of a page do not meet; letters, digits, - and _ */
  readonly prefix?: string;
  /** carries `screenStyle`, for a file that is looked at by itself */
  readonly styled?: boolean;
  /** says that we made it: for files */
  readonly marked?: boolean;
  /** room round the drawing, mm; a twentieth of its larger side where nothing is said */
  readonly around?: number;
  /** colour of a ground below everything; none where nothing is said */
  readonly paper?: string;
}

/**
 * A drawing for a screen (SVG 1.1 in millimetres of the drawing, scaled by its viewBox): no colours of its own but classes.
 * `laybook-drawing` is the whole, `layer layer-LAYER` a group (with `data-layer`), `shape`, `closed`, `dashed`, `fine`, `arrow`, `note` and
 * `hatched` the items; what stands behind an item is in `data-path` and `data-name`. Strokes keep their width at any zoom, but for
 * those of layers so thin that nothing would be seen between them.
 */
export function screenSvg(drawing: Drawing, options: ScreenOptions = {}): string {
  const { low, high } = drawing;
  const around = options.around ?? Math.max(high.x - low.x, high.y - low.y) * 50;
  const { size, frame } = frameOf(drawing, around);
  const prefix = options.prefix ?? 'laybook';
  const hatches = new Map<string, string>();
  const fine = fineStroke(drawing, size.width);
  const width = fine === undefined ? '' : ` stroke-width="${fine}"`;
  const groups = byLayer(drawing.items).map(
    ([layer, items]) =>
      `<g class="layer layer-${layer}" data-layer="${layer}"${width}>${items.map((item) => screenItem(item, frame, fine !== undefined, prefix, hatches)).join('')}</g>`,
  );
  const head = `<svg xmlns="http://www.w3.org/2000/svg" class="laybook-drawing" role="img" viewBox="0 0 ${size.width} ${size.height}"`;
  return [
    options.marked ? `<!-- ${mark} -->\n` : '',
    head,
    options.styled ? ` width="${size.width}mm" height="${size.height}mm"` : '',
    `><title>${xmlText(drawing.title)}</title>`,
    options.styled ? `<style>${screenStyle}</style>` : '',
    options.paper === undefined ? '' : `<rect width="${size.width}" height="${size.height}" fill="${options.paper}"/>`,
    hatchDefinitions(hatches, Math.max(high.x - low.x, high.y - low.y) * 1000),
    ...groups,
    '</svg>',
    options.marked ? '\n' : '',
  ].join('');
}

const fixed = ' vector-effect="non-scaling-stroke"';

/** Of what is this wide on a screen, points, lines of the usual width hide what is thinner than three of them. */
const [usualView, usualStroke] = [800, 1.2];

/** A third of the thinnest layer where the usual stroke would hide it, mm of the drawing. */
function fineStroke({ thinnest }: Drawing, width: string): string | undefined {
  const third = thinnest === undefined ? Infinity : (thinnest * 1000) / 3;
  return third * usualView < usualStroke * Number(width) ? written(third) : undefined;
}

function screenItem(
  item: DrawnItem,
  frame: Frame,
  fine: boolean,
  prefix: string,
  hatches: Map<string, string>,
): string {
  const { source } = item;
  const data =
    (source === undefined ? '' : ` data-path="${xmlText(source.path)}"`) +
    (source?.name === undefined ? '' : ` data-name="${xmlText(source.name)}"`);
  if (item.kind === 'text') return textElement(item, frame, `class="note"${data}`);
  if (item.kind === 'arrow') return shapeElement(item, frame, ` class="arrow"${fixed}${data}`);
  if (item.kind === 'circle') return shapeElement(item, frame, ` class="shape closed"${fixed}${data}`);
  const classes = `shape${item.closed ? ' closed' : ''}${item.dashed ? ' dashed' : ''}${fine ? ' fine' : ''}`;
  return (
    shapeElement(item, frame, ` class="${classes}"${fine ? '' : fixed}${data}`) +
    hatched(item, frame, prefix, hatches, data)
  );
}

/** The hatch is a shape of its own above the fill, so that a style may take it away. */
function hatched(line: DrawnLine, frame: Frame, prefix: string, hatches: Map<string, string>, data: string): string {
  if (line.hatch === undefined || !line.closed) return '';
  const angle = written(((((-line.hatch * 180) / Math.PI) % 180) + 180) % 180);
  const id = `${prefix}-hatch-${angle.replace('.', '_')}`;
  hatches.set(angle, id);
  return shapeElement(line, frame, ` class="hatched" fill="url(#${id})" stroke="none"${data}`);
}

/** Strokes of a hatch are this share of the drawing's larger side apart. */
const hatchPitch = 1 / 140;

function hatchDefinitions(hatches: ReadonlyMap<string, string>, side: number): string {
  if (hatches.size === 0) return '';
  const pitch = written(side * hatchPitch);
  const patterns = [...hatches]
    .sort(([a], [b]) => Number(a) - Number(b))
    .map(
      ([angle, id]) =>
        `<pattern id="${id}" patternUnits="userSpaceOnUse" width="${pitch}" height="${pitch}" patternTransform="rotate(${angle})">` +
        `<path class="hatch" d="M0 0H${pitch}" vector-effect="non-scaling-stroke"/></pattern>`,
    );
  return `<defs>${patterns.join('')}</defs>`;
}

/** Colours of drawings; a theme sets the variables. Readable in black and white: layers differ by stroke too. */
export const screenStyle = [
  '.laybook-drawing .shape,.laybook-drawing .arrow{fill:none;stroke:var(--laybook-line,#333);stroke-width:1.2px}',
  '.laybook-drawing .note{fill:var(--laybook-text,#222)}',
  '.laybook-drawing .dashed{stroke-dasharray:6 4}',
  '.laybook-drawing .hatch{stroke:var(--laybook-hatch,#8a8a8a);stroke-width:.7px;fill:none}',
  '.laybook-drawing .layer-outline .shape{stroke-width:2px}',
  '.laybook-drawing .layer-cloth .shape{stroke:var(--laybook-cloth,#1f6f8b)}',
  '.laybook-drawing .layer-core .shape{stroke:var(--laybook-core,#a0762c)}',
  '.laybook-drawing .layer-insert .shape{stroke:var(--laybook-insert,#7a3e9d)}',
  '.laybook-drawing .layer-perforation .shape{stroke:var(--laybook-core,#a0762c)}',
  '.laybook-drawing .layer-tool .shape{stroke:var(--laybook-tool,#777)}',
  '.laybook-drawing .layer-zone .shape{stroke:var(--laybook-zone,#555);stroke-dasharray:3 3}',
  '.laybook-drawing .layer-flow .shape,.laybook-drawing .layer-flow .arrow{stroke:var(--laybook-flow,#1a49b8);stroke-width:2px}',
  '.laybook-drawing .layer-process .shape,.laybook-drawing .layer-process .arrow{stroke:var(--laybook-process,#2f7d32)}',
  '.laybook-drawing .layer-tool .shape{stroke:var(--laybook-tool,#777)}',
  '.laybook-drawing .layer-zone .shape{stroke:var(--laybook-zone,#8a5a00);stroke-dasharray:2 3}',
  '.laybook-drawing .layer-flow .shape{stroke:var(--laybook-flow,#b3261e);stroke-width:2px}',
  '.laybook-drawing .layer-dimension .shape,.laybook-drawing .layer-dimension .arrow{stroke:var(--laybook-dimension,#666);stroke-width:.8px}',
  '.laybook-drawing .layer .shape.fine{stroke-width:inherit}',
  '.laybook-drawing .layer-mark .shape{stroke:var(--laybook-mark,#1a49b8)}',
  '.laybook-drawing .layer-drill .shape{stroke:var(--laybook-drill,#2f7d32)}',
].join('');
