import { arrowStrokes } from '../../calc/drawing/arrow.ts';
import type { Drawing, DrawingLayer, DrawnItem, DrawnText } from '../../calc/drawing/drawing.ts';
import { byLayer } from '../../calc/drawing/layers.ts';
import type { Contour } from '../../calc/outline/contour.ts';
import type { Point } from '../../calc/outline/shape.ts';
import { safe } from '../view/text.ts';
import { ascii } from './ascii.ts';
import { mark } from './made-by.ts';
import { written } from './numbers.ts';

/** A group code and its value, as each stands on a line. */
type Group = readonly [code: number, value: string | number];

/** Colour numbers: red, blue, green; 7 is black on white and white on black. */
const colours: Partial<Record<DrawingLayer, number>> = { cut: 1, mark: 5, drill: 3 };

/** Names of layers: ASCII of at most 31 letters, capitals, as release 12 has them. */
export const dxfLayer = (layer: DrawingLayer): string => layer.toUpperCase();

const lineTypes: readonly (readonly [name: string, dashes: readonly number[]])[] = [
  ['CONTINUOUS', []],
  ['DASHED', [4, -2]],
];

/**
 * A drawing in millimetres as a DXF file of release 12 (AC1009), the oldest that is in use and the one that every cutter reads:
 * lines as polylines whose arcs are bulges, holes as circles, words as text. The lower left corner lies at the origin.
 * Source of the codes: AutoCAD DXF reference.
 */
export function dxf(drawing: Drawing): string {
  const { low, high } = drawing;
  const layers = byLayer(drawing.items);
  const groups: readonly Group[] = [
    [999, mark],
    ...section('HEADER', [
      ...variable('$ACADVER', [1, 'AC1009']),
      ...variable('$DWGCODEPAGE', [3, 'ANSI_1252']),
      // Millimetres, metric: readers of our days look for both, release 12 overlooks them.
      ...variable('$INSUNITS', [70, 4]),
      ...variable('$MEASUREMENT', [70, 1]),
      ...variable('$EXTMIN', ...at({ x: 0, y: 0 })),
      ...variable('$EXTMAX', ...at({ x: (high.x - low.x) * 1000, y: (high.y - low.y) * 1000 })),
    ]),
    ...section('TABLES', [
      ...table('LTYPE', lineTypes.map(lineType)),
      ...table(
        'LAYER',
        layers.map(([layer]) => [
          [0, 'LAYER'],
          [2, dxfLayer(layer)],
          [70, 0],
          [62, colours[layer] ?? 7],
          [6, 'CONTINUOUS'],
        ]),
      ),
    ]),
    ...section(
      'ENTITIES',
      layers.flatMap(([, items]) => items.flatMap((item) => entities(item, low))),
    ),
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

const section = (name: string, content: readonly Group[]): readonly Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...content,
  [0, 'ENDSEC'],
];

const variable = (name: string, ...values: readonly Group[]): readonly Group[] => [[9, name], ...values];

const table = (name: string, rows: readonly (readonly Group[])[]): readonly Group[] => [
  [0, 'TABLE'],
  [2, name],
  [70, rows.length],
  ...rows.flat(),
  [0, 'ENDTAB'],
];

function lineType([name, dashes]: (typeof lineTypes)[number]): readonly Group[] {
  const length = dashes.reduce((sum, each) => sum + Math.abs(each), 0);
  return [
    [0, 'LTYPE'],
    [2, name],
    [70, 0],
    [3, ''],
    [72, 65],
    [73, dashes.length],
    [40, written(length)],
    ...dashes.map((each): Group => [49, written(each)]),
  ];
}

/** The codes of a point (mm): 10 and 20 for the first of an entity, 11 and 21 for its second. */
const at = ({ x, y }: Point, second = 0): readonly Group[] => [
  [10 + second, written(x)],
  [20 + second, written(y)],
];

function entities(item: DrawnItem, low: Point): readonly Group[] {
  const place = ({ x, y }: Point): Point => ({ x: (x - low.x) * 1000, y: (y - low.y) * 1000 });
  const layer: Group = [8, dxfLayer(item.layer)];
  switch (item.kind) {
    case 'line':
      return polyline(item.points, item.closed, [layer, ...(item.dashed ? [[6, 'DASHED'] as const] : [])], place);
    case 'circle':
      return [[0, 'CIRCLE'], layer, ...at(place(item.centre)), [40, written(item.radius * 1000)]];
    case 'text':
      return textEntity(item, layer, place);
    case 'arrow':
      return arrowStrokes(item).flatMap((stroke) =>
        stroke.slice(1).flatMap((to, i) => line(stroke[i] as Point, to, [layer], place)),
      );
  }
}

type Place = (point: Point) => Point;

const line = (from: Point, to: Point, more: readonly Group[], place: Place): readonly Group[] => [
  [0, 'LINE'],
  ...more,
  ...at(place(from)),
  ...at(place(to), 1),
];

function polyline(points: Contour, closed: boolean, more: readonly Group[], place: Place): readonly Group[] {
  const [first, last] = points;
  if (first === undefined || last === undefined) return [];
  if (!closed && points.length === 2 && !first.bulge) return line(first, last, more, place);
  const own = more.slice(0, 1);
  return [
    [0, 'POLYLINE'],
    ...more,
    [66, 1],
    ...at({ x: 0, y: 0 }),
    // Closed by its flag: the first point is not written again.
    [70, closed ? 1 : 0],
    ...points.flatMap((vertex): readonly Group[] => [
      [0, 'VERTEX'],
      ...own,
      ...at(place(vertex)),
      ...(vertex.bulge ? [[42, vertex.bulge.toFixed(12)] as const] : []),
    ]),
    [0, 'SEQEND'],
    ...own,
  ];
}

const anchors = { start: 0, middle: 1, end: 2 } as const;

function textEntity({ at: from, height, text, angle = 0, anchor = 'start' }: DrawnText, layer: Group, place: Place) {
  const point = place(from);
  const groups: Group[] = [[0, 'TEXT'], layer, ...at(point), [40, written(height * 1000)], [1, dxfText(text)]];
  if (angle !== 0) groups.push([50, written((angle * 180) / Math.PI)]);
  if (anchor !== 'start') groups.push([72, anchors[anchor]], ...at(point, 1));
  return groups;
}

/**
 * Words of others as the value of a group: one line of ASCII, in which nothing is read as a code (`%%`, `^`, a backslash),
 * and other letters by their number (`\U+00E9`).
 */
export const dxfText = (words: string): string =>
  ascii(
    safe(words)
      .replace(/[\u2028\u2029\\]/g, '/')
      .replace(/%%+/g, '%')
      .replaceAll('^', ''),
    (sign) => {
      const code = sign.codePointAt(0) ?? 0;
      return code <= 0xffff ? `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}` : '?';
    },
  ).slice(0, 255);
