import type { Drawing, DrawnItem } from '../../../calc/drawing/drawing.ts';
import { showNumber } from '../figures.ts';
import { type Style, say } from '../text.ts';
import { translated } from '../translation.ts';
import { isOutside, type Series } from './builds.ts';
import { digits } from './lots.ts';

/** m of the drawing; only their ratio matters */
const width = 0.12;
const height = 0.045;
const letters = 0.0034;
/** of the letters' height: how wide one letter is, at the most, and how far apart two lines of writing stand */
const letterWidth = 0.9;
const lineHeight = 1.4;
/** a chart shows at least this share of its values, lest a rounding look like a leap */
const leastShown = 0.05;
/** limits nearer to each other than this share of the mean are one line */
const alike = 1e-6;

/**
 * A small chart of one quantity over the builds: a ring for each, the plan as steps, the limits of the shop's own spread
 * dashed, the mean thin. Rings outside the limits are crossed, so that nothing is told by colour.
 */
export function chartOf({ kind, points, limits: own }: Series, style: Style): Drawing {
  const limits = own === undefined ? undefined : { ...own, low: Math.max(0, own.low) };
  const values = points.flatMap(({ value, plan }) => [value, ...(plan === undefined ? [] : [plan])]);
  const all = [...values, ...(limits === undefined ? [] : [limits.low, limits.high])];
  const [low, high] = atLeastShown(Math.min(...all), Math.max(...all));
  const room = (high - low) * 0.08;
  const y = (value: number): number => ((value - low + room) / (high - low + 2 * room)) * height;
  const x = (i: number): number => ((i + 0.5) / points.length) * width;
  const across = (value: number, dashed: boolean): DrawnItem => ({
    kind: 'line',
    layer: 'dimension',
    closed: false,
    dashed,
    points: [
      { x: 0, y: y(value) },
      { x: width, y: y(value) },
    ],
  });
  const hasSpread = limits !== undefined && limits.high - limits.low > alike * Math.abs(limits.mean);
  const lastPlan = points.at(-1)?.plan;
  const told: readonly (readonly [value: number | undefined, words: string])[] = [
    [limits?.mean, say('mean')],
    [hasSpread ? limits.high : undefined, say('limit')],
    [hasSpread ? limits.low : undefined, say('limit')],
    [lastPlan, say('plan')],
  ];
  const labels = beside(
    told.flatMap(([value, words]) =>
      value === undefined ? [] : [{ y: y(value), text: `${words} ${showNumber(value, kind.dimension, style)}` }],
    ),
  );
  const ticks = points.map(({ record }) => digits(record.title) ?? record.date ?? '');
  const widest = Math.max(...ticks.map((tick) => tick.length)) * letterWidth * letters * 0.8 + letters;
  const every = Math.ceil((points.length * widest) / width);
  const items: DrawnItem[] = [
    {
      kind: 'line',
      layer: 'outline',
      closed: true,
      points: [
        { x: 0, y: 0 },
        { x: width, y: 0 },
        { x: width, y: height },
        { x: 0, y: height },
      ],
    },
    ...(limits === undefined ? [] : [across(limits.mean, false)]),
    ...(hasSpread ? [across(limits.low, true), across(limits.high, true)] : []),
    ...labels,
    ...planSteps(points, x, y),
    ...points.flatMap(({ value }, i): DrawnItem[] => {
      const out = limits !== undefined && isOutside(value, limits);
      const centre = { x: x(i), y: y(value) };
      const arm = 0.0016;
      const cross: DrawnItem[] = out
        ? [-1, 1].map((way) => ({
            kind: 'line',
            layer: 'outline',
            closed: false,
            points: [
              { x: centre.x - arm, y: centre.y - way * arm },
              { x: centre.x + arm, y: centre.y + way * arm },
            ],
          }))
        : [];
      const tick: DrawnItem = {
        kind: 'text',
        layer: 'text',
        at: { x: x(i), y: -letters * 1.6 },
        height: letters * 0.8,
        anchor: 'middle',
        text: ticks[i] ?? '',
      };
      return [{ kind: 'circle', layer: 'cloth', centre, radius: 0.0011 }, ...cross, ...(i % every === 0 ? [tick] : [])];
    }),
  ];
  return {
    title:
      points.length === 1
        ? say('{quantity} of 1 build', { quantity: translated(kind.title) })
        : say('{quantity} of {count} builds', { quantity: translated(kind.title), count: points.length }),
    seenFrom: 'edge',
    low: { x: -0.002, y: -letters * 2.6 },
    high: { x: width + 0.002 + widestLabel(labels), y: 0.002 + Math.max(height, topOf(labels)) },
    items,
  };
}

/** The span of a chart: widened about its middle where it is less than can be told apart at the bench. */
function atLeastShown(low: number, high: number): [low: number, high: number] {
  const least = leastShown * Math.max(Math.abs(low), Math.abs(high)) || 1;
  const more = Math.max(0, least - (high - low)) / 2;
  return [low - more, high + more];
}

/** Words to the right of the chart, each as near to its height as the one below it allows. */
function beside(labels: readonly { y: number; text: string }[]): Extract<DrawnItem, { kind: 'text' }>[] {
  let free = Number.NEGATIVE_INFINITY;
  return [...labels]
    .sort((a, b) => a.y - b.y)
    .map(({ y, text }) => {
      const bottom = Math.max(y - letters / 2, free);
      free = bottom + letters * lineHeight;
      return { kind: 'text', layer: 'text', at: { x: width + 0.002, y: bottom }, height: letters, text };
    });
}

const topOf = (labels: readonly { at: { y: number } }[]): number => (labels.at(-1)?.at.y ?? 0) + letters;

const widestLabel = (labels: readonly { text: string }[]): number =>
  Math.max(0, ...labels.map(({ text }) => text.length)) * letterWidth * letters;

/** The plan, level for each build, with a step where a revision moved it. */
function planSteps(points: Series['points'], x: (i: number) => number, y: (value: number) => number): DrawnItem[] {
  const half = width / points.length / 2;
  return points.flatMap(({ plan }, i): DrawnItem[] =>
    plan === undefined
      ? []
      : [
          {
            kind: 'line',
            layer: 'core',
            closed: false,
            points: [
              { x: x(i) - half, y: y(plan) },
              { x: x(i) + half, y: y(plan) },
            ],
          },
        ],
  );
}
