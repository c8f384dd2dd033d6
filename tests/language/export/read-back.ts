/** Files as other libraries read them. */
import DxfParser, { type IEntity } from 'dxf-parser';
import { SaxesParser } from 'saxes';
import SvgPath from 'svg-path-commander';

export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** ids of the groups round it */
  readonly within: readonly string[];
  text: string;
}

/** The elements of an SVG file in order; throws at the first fault of its XML. */
export function readSvg(file: string): readonly SvgElement[] {
  const parser = new SaxesParser({ xmlns: true });
  const found: SvgElement[] = [];
  const open: SvgElement[] = [];
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element: SvgElement = {
      name,
      attributes: Object.fromEntries(Object.values(attributes).map((each) => [each.name, each.value])),
      within: open.flatMap((each) => each.attributes.id ?? []),
      text: '',
    };
    found.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    const inner = open.at(-1);
    if (inner !== undefined) inner.text += text;
  });
  parser.on('closetag', () => void open.pop());
  parser.write(file).close();
  return found;
}

/**
 * mm2 inside a path of straights and arcs, whichever way it runs: the shoelace formula, and the circular segment of each arc,
 * whose sweep is 2 asin(chord / 2r), or the rest of the circle for a large one. (The library that reads the path has areas too, but
 * takes an arc for a cubic: 3e-4 of its radius beside the circle.)
 */
export function areaOfPath(data: string): number {
  const segments = SvgPath.parsePathString(data);
  let area = 0;
  let [x, y] = [0, 0];
  let start = [0, 0];
  for (const segment of segments) {
    const [kind, ...values] = segment as readonly [string, ...number[]];
    const [endX = 0, endY = 0] = kind === 'Z' ? start : values.slice(-2);
    if (kind === 'M') start = [endX, endY];
    else area += (x * endY - endX * y) / 2;
    if (kind === 'A') {
      const [radius = 0, , , large, turnsRight] = values;
      const small = 2 * Math.asin(Math.min(1, Math.hypot(endX - x, endY - y) / (2 * radius)));
      const sweep = (large ? 2 * Math.PI - small : small) * (turnsRight ? 1 : -1);
      area += (radius ** 2 / 2) * (sweep - Math.sin(sweep));
    } else if (!/[MLZ]/.test(kind)) throw new Error(`${kind} is no straight and no arc`);
    [x, y] = [endX, endY];
  }
  return Math.abs(area);
}

export const boxOfPath = (data: string) => SvgPath.getPathBBox(data);

export interface DxfVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

export interface DxfEntity extends IEntity {
  readonly vertices?: readonly DxfVertex[];
  readonly shape?: boolean;
  readonly radius?: number;
  readonly center?: DxfVertex;
  readonly text?: string;
  readonly textHeight?: number;
  readonly startPoint?: DxfVertex;
}

export function readDxf(file: string) {
  const read = new DxfParser().parseSync(file);
  if (read === null) throw new Error('no DXF file');
  return { ...read, entities: read.entities as readonly DxfEntity[] };
}

/**
 * mm2 inside a closed polyline with bulges: the shoelace formula over its chords, and a circular segment
 * (r^2 / 2) (sweep - sin sweep) for each arc, r = chord / (2 sin(sweep / 2)).
 */
export function areaOfPolyline(vertices: readonly DxfVertex[]): number {
  return vertices.reduce((area, a, i) => {
    const b = vertices[(i + 1) % vertices.length] as DxfVertex;
    const straight = (a.x * b.y - b.x * a.y) / 2;
    const sweep = 4 * Math.atan(a.bulge ?? 0);
    if (sweep === 0) return area + straight;
    const radius = Math.hypot(b.x - a.x, b.y - a.y) / (2 * Math.sin(sweep / 2));
    return area + straight + (radius ** 2 / 2) * (sweep - Math.sin(sweep));
  }, 0);
}
