import { quantity, text } from '../../figure/figure.ts';
import type { Bench } from '../../figure/index.ts';
import { UNKNOWN } from '../../model/value.ts';
import type { PartFrame } from '../../outline/part.figure.ts';
import { origin, type Point } from '../../outline/shape.ts';
import { LENGTH } from '../../quantity/index.ts';
import type { DrawnItem } from '../drawing.ts';
import { offsetContours, placedContour } from './contours.ts';
import { type Pen, penOf, type Thing } from './thing.ts';
import { longBy, pastOutline } from './words.ts';

/** How far past the part a tool is drawn, as a share of the larger side of the part: a small part on a large table stays large enough to read. */
const drawnPast = 0.75;

/** The flat of the tool, the part in its middle, and the flange round the part. */
export function toolThings(bench: Bench, frame: PartFrame): Thing[] {
  const name = bench.recipe.stack?.tool;
  const tool = name === undefined ? undefined : bench.tool(name);
  if (name === undefined || tool === undefined) return [];
  const source = { path: `${bench.recipe.stack?.path}.tool`, name };
  const pen = penOf('tool', source);
  const flat = tool.flat?.value === UNKNOWN ? undefined : tool.flat?.value;
  const flange = tool.flange?.value === UNKNOWN ? undefined : tool.flange?.value;
  const [length, width] = [flat?.length.si ?? 0, flat?.width.si ?? 0];
  const far = drawnPast * Math.max(frame.bounds.length, frame.bounds.width);
  const near = { x: frame.bounds.length / 2 + far, y: frame.bounds.width / 2 + far };
  const whole = length / 2 <= near.x && width / 2 <= near.y;
  const rims = flange === undefined ? [] : offsetContours({ shape: frame.shape, centre: origin }, flange.si);
  const drawn = flat !== undefined && length > 0 && width > 0;
  if (!drawn && rims.length === 0) return [];
  return [
    {
      layer: 'tool',
      source,
      what:
        flange === undefined
          ? text('tool {name}', { name })
          : text('tool {name}, with a flange of {flange} round the part', {
              name,
              flange: quantity(flange.si, LENGTH),
            }),
      where: !drawn
        ? pastOutline(flange?.si ?? 0)
        : whole
          ? text('drawn with the part in its middle')
          : text('the part in its middle; what lies farther than {far} from it is not drawn', {
              far: quantity(far, LENGTH),
            }),
      size: drawn ? longBy(length, width) : text('not given'),
      tag: text('tool {name}', { name }),
      items: [
        ...(drawn ? board(pen, { length, width }, near) : []),
        ...rims.map((rim) => pen.line(rim, { dashed: true })),
      ],
    },
  ];
}

/** Edges of the flat, as far as they lie near the part. */
function board(pen: Pen, { length, width }: { length: number; width: number }, near: Point): DrawnItem[] {
  const [x, y] = [length / 2, width / 2];
  const [reach, rise] = [Math.min(x, near.x), Math.min(y, near.y)];
  if (x <= near.x && y <= near.y) {
    const rectangle = placedContour({ shape: { kind: 'rectangle', length, width }, centre: origin });
    return rectangle === undefined ? [] : [pen.line(rectangle)];
  }
  const edge = (from: Point, to: Point): DrawnItem => pen.line([from, to], { closed: false });
  return [
    ...(y <= near.y ? [-y, y].map((at) => edge({ x: -reach, y: at }, { x: reach, y: at })) : []),
    ...(x <= near.x ? [-x, x].map((at) => edge({ x: at, y: -rise }, { x: at, y: rise })) : []),
  ];
}
