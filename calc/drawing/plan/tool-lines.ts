import { quantity, text } from '../../figure/figure.ts';
import type { Bench } from '../../figure/index.ts';
import { UNKNOWN } from '../../model/value.ts';
import type { PartFrame } from '../../outline/part.figure.ts';
import { origin } from '../../outline/shape.ts';
import { LENGTH } from '../../quantity/index.ts';
import { offsetContours, placedContour } from './contours.ts';
import { penOf, type Thing } from './thing.ts';
import { longBy, pastOutline } from './words.ts';

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
  const board = placedContour({ shape: { kind: 'rectangle', length, width }, centre: origin });
  const rims = flange === undefined ? [] : offsetContours({ shape: frame.shape, centre: origin }, flange.si);
  const drawn = board !== undefined && flat !== undefined;
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
      where: drawn ? text('drawn with the part in its middle') : pastOutline(flange?.si ?? 0),
      size: drawn ? longBy(length, width) : text('not given'),
      tag: text('tool {name}', { name }),
      items: [...(drawn ? [pen.line(board)] : []), ...rims.map((rim) => pen.line(rim, { dashed: true }))],
    },
  ];
}
