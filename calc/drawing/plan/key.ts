import { text } from '../../figure/figure.ts';
import type { Box } from '../bounds.ts';
import type { DrawingLayer, DrawnItem } from '../drawing.ts';
import { penOf, type Thing, type Writing } from './thing.ts';

/** What a row of the key can be of. */
const keyed: ReadonlySet<DrawingLayer> = new Set(['coat', 'cloth', 'core', 'insert']);

/** More rows than anybody reads below a drawing. */
const mostRows = 24;

/** Below the drawing: from where it is seen, and the layers of the stack from the bag side, each with its hatch. */
export function keyThings(things: readonly Thing[], { low }: Box, { height, say }: Writing): Thing[] {
  const layers = things.filter(({ layer, source }) => keyed.has(layer) && source.path.startsWith('stack')).reverse();
  const rows = layers.slice(0, mostRows);
  const step = 1.9 * height;
  const top = low.y - 2 * step;
  const source = { path: 'stack', name: 'key' };
  const more = layers.length - rows.length;
  const heading =
    more === 0
      ? text('Seen from the bag side. Layers from the bag side to the tool:')
      : text('Seen from the bag side. Layers from the bag side to the tool, {more} more below:', { more });
  return [
    {
      layer: 'text',
      source,
      what: text('key of the layers'),
      where: text('outside of what is drawn'),
      size: layers.length === 1 ? text('1 layer') : text('{count} layers', { count: layers.length }),
      items: [penOf('text', source).text({ x: low.x, y: top }, height, say(heading))],
    },
    ...rows.map((thing, i): Thing => {
      const y = top - (i + 1) * step;
      return { ...thing, items: keyRow(thing, low.x, y, { height, say }) };
    }),
  ];
}

function keyRow({ layer, source, hatch, what }: Thing, x: number, y: number, { height, say }: Writing): DrawnItem[] {
  const pen = penOf(layer, source);
  const [left, right, top] = [x, x + 3 * height, y + height];
  const swatch = [
    { x: left, y },
    { x: right, y },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return [
    pen.line(swatch, hatch === undefined ? {} : { hatch }),
    pen.text({ x: right + height, y }, height, say(what)),
  ];
}
