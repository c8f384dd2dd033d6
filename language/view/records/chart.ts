import type { Drawing, DrawnItem } from '../../../calc/drawing/drawing.ts';
import { showNumber } from '../figures.ts';
import { type Style, say } from '../text.ts';
import { isOutside, type Series } from './builds.ts';
import { digits } from './lots.ts';

/** m of the drawing; only their ratio matters */
const width = 0.16;
const height = 0.05;
const letters = 0.0028;
/** limits nearer to each other than this share of the mean are one line */
const alike = 1e-6;

/**
 * A small chart of one quantity over the builds: a ring for each, the plan as steps, the limits of the shop's own spread
 * dashed, the mean thin. Rings outside the limits are crossed, so that nothing is told by colour.
 */
export function chartOf({ kind, points, limits: told }: Series, style: Style): Drawing {
  const limits = told === undefined ? undefined : { ...told, low: Math.max(0, told.low) };
  const values = points.flatMap(({ value, plan }) => [value, ...(plan === undefined ? [] : [plan])]);
  const all = [...values, ...(limits === undefined ? [] : [limits.low, limits.high])];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = (high - low || Math.abs(high) || 1) * 0.08;
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
  const label = (value: number, words: string): DrawnItem => ({
    kind: 'text',
    layer: 'text',
    at: { x: width + 0.002, y: y(value) - letters / 2 },
    height: letters,
    text: `${words} ${showNumber(value, kind.dimension, style)}`,
  });
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
    ...(limits === undefined
      ? []
      : [
          across(limits.mean, false),
          label(limits.mean, say('mean')),
          ...(limits.high - limits.low > alike * Math.abs(limits.mean)
            ? [
                across(limits.low, true),
                across(limits.high, true),
                label(limits.high, say('limit')),
                label(limits.low, say('limit')),
              ]
            : []),
        ]),
    ...planSteps(points, x, y),
    ...points.flatMap(({ value, record }, i): DrawnItem[] => {
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
        text: digits(record.title) ?? record.date ?? '',
      };
      const every = Math.ceil(points.length / 20);
      return [{ kind: 'circle', layer: 'cloth', centre, radius: 0.0011 }, ...cross, ...(i % every === 0 ? [tick] : [])];
    }),
  ];
  return {
    title: say('{quantity} of {count} builds', { quantity: kind.title, count: points.length }),
    seenFrom: 'edge',
    low: { x: -0.002, y: -letters * 2.6 },
    high: { x: width + 0.034, y: height + 0.002 },
    items,
  };
}

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
