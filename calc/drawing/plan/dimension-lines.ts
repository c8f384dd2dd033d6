import { text } from '../../figure/figure.ts';
import { type Bench, isKnown } from '../../figure/index.ts';
import { type PartFrame, zonePlaced } from '../../outline/part.figure.ts';
import type { Point } from '../../outline/shape.ts';
import type { Box } from '../bounds.ts';
import type { DrawnItem, Source } from '../drawing.ts';
import { lengthOf, sizeOf } from './part-lines.ts';
import { penOf, type Thing, type Writing } from './thing.ts';
import { longBy } from './words.ts';

/** What is measured: between two points, along x or along y, with its line at `at` on the other axis. */
interface Span {
  readonly source: Source;
  readonly from: Point;
  readonly to: Point;
  readonly along: 'x' | 'y';
  readonly at: number;
}

/** Axes at the origin, and the overall sizes of the part and of its zones, outside of all that is drawn. */
export function dimensionThings(bench: Bench, { bounds, part }: PartFrame, box: Box, writing: Writing): Thing[] {
  const step = 2.6 * writing.height;
  const overall = { path: `${part.path}.outline`, name: 'outline' };
  const zones = part.zones.flatMap((zone, i): Span[] => {
    const placed = bench.ask(zonePlaced, zone.name);
    if (!isKnown(placed)) return [];
    const { length, width } = sizeOf(placed.value);
    const { x, y } = placed.value.centre;
    const source = { path: zone.path, name: zone.name };
    const high = { x: x + length / 2, y: y + width / 2 };
    const low = { x: x - length / 2, y: y - width / 2 };
    // the overall width stands to the left too
    const out = (i + 1) * step;
    return [
      { source, along: 'x', at: box.high.y + out, from: { x: low.x, y: high.y }, to: high },
      { source, along: 'y', at: box.low.x - out - step, from: low, to: { x: low.x, y: high.y } },
    ];
  });
  const spans: Span[] = [
    { source: overall, along: 'x', at: box.low.y - step, from: bounds.low, to: { x: bounds.high.x, y: bounds.low.y } },
    {
      source: overall,
      along: 'y',
      at: box.low.x - step,
      from: bounds.low,
      to: { x: bounds.low.x, y: bounds.high.y },
    },
    ...zones,
  ];
  const sources = [overall, ...part.zones.map(({ path, name }) => ({ path, name }))];
  return sources.flatMap((source): Thing[] => {
    const own = spans.filter((span) => span.source.path === source.path);
    const [along, across] = own;
    if (along === undefined || across === undefined) return [];
    return [
      {
        layer: 'dimension',
        source,
        what: text('dimensions of {name}', { name: source.name }),
        where: text('outside of what is drawn'),
        size: longBy(along.to.x - along.from.x, across.to.y - across.from.y),
        items: [
          ...own.flatMap((span) => spanItems(span, writing)),
          ...(source === overall ? axes(source, writing) : []),
        ],
      },
    ];
  });
}

function spanItems({ source, from, to, along, at }: Span, { height, say }: Writing): DrawnItem[] {
  const pen = penOf('dimension', source);
  const gap = height * 0.5;
  const [a, b] =
    along === 'x'
      ? [
          { x: from.x, y: at },
          { x: to.x, y: at },
        ]
      : [
          { x: at, y: from.y },
          { x: at, y: to.y },
        ];
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const words = say(lengthOf(length));
  const lead = (edge: Point, end: Point): DrawnItem => pen.line([edge, end], { closed: false });
  return [
    lead(from, a),
    lead(to, b),
    pen.arrow(a, b, 'both'),
    along === 'x'
      ? pen.text({ x: middle.x, y: middle.y + gap }, height, words, { anchor: 'middle' })
      : pen.text({ x: middle.x - gap, y: middle.y }, height, words, { anchor: 'middle', angle: Math.PI / 2 }),
  ];
}

function axes(source: Source, { height }: Writing): DrawnItem[] {
  const pen = penOf('dimension', source);
  const long = 4 * height;
  return [
    pen.arrow({ x: 0, y: 0 }, { x: long, y: 0 }),
    pen.arrow({ x: 0, y: 0 }, { x: 0, y: long }),
    pen.text({ x: long + 0.4 * height, y: -1.2 * height }, height, 'x'),
    pen.text({ x: 0, y: long + 0.4 * height }, height, 'y', { anchor: 'middle' }),
  ];
}
