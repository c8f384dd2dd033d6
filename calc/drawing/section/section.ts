import { quantity, text } from '../../figure/figure.ts';
import { type Bench, type Figure, knownBy, whenKnown } from '../../figure/index.ts';
import { type PartFrame, partFrame } from '../../outline/part.figure.ts';
import { LENGTH } from '../../quantity/index.ts';
import { laidStack } from '../../stack/laid.figure.ts';
import { boundsOf } from '../bounds.ts';
import { withLeaders } from '../plan/leaders.ts';
import type { PlanOptions } from '../plan/plan.ts';
import { type DrawnThings, penOf, type Say, type Thing, type Writing } from '../plan/thing.ts';
import { longBy } from '../plan/words.ts';
import { sectionLayers } from './layers.ts';
import { flatFrom, heightAt, topOf } from './profile.ts';

/** Capitals of what is printed, as a share of the length of the part. */
const printed = 0.02;
/** How high the stack is drawn, as a share of its length. */
const flatness = 0.22;
/** Room beside the part that nothing lies on, as a share of its length. */
const beside = 0.02;

/**
 * The stack cut along the middle line, from the tool up to the bag side: lengths as they are, thickness the same number of times larger
 * everywhere, which the drawing says.
 */
export function sectionOf(
  bench: Bench,
  say: Say,
  { without, letters = printed }: PlanOptions = {},
): Figure<DrawnThings> {
  return whenKnown({ frame: bench.ask(partFrame), stack: bench.ask(laidStack) }, ({ frame, stack }, reasons) => {
    const { length } = frame.bounds;
    const writing: Writing = { say, height: letters * length };
    const room = beside * length;
    const floor = flatFrom(frame.bounds.low.x - room, frame.bounds.high.x + room);
    const { profile } = sectionLayers(bench, stack.layers, floor, 1);
    const high = topOf(profile);
    const factor = high > 0 ? roundFactor((flatness * length) / high) : 1;
    const { things: layers, thinnest } = sectionLayers(bench, stack.layers, floor, factor);
    const middle = heightAt(profile, 0);
    const drawn = [toolThing(bench, frame, writing), ...layers].filter(({ layer }) => without?.has(layer) !== true);
    const box = boundsOf(drawn.flatMap(({ items }) => items));
    const named = withLeaders(drawn, box, writing, { apart: true });
    const measured = [
      ...named,
      ...[dimensionThing(frame, { middle, high, factor }, writing)].filter(({ layer }) => without?.has(layer) !== true),
    ];
    const items = measured.flatMap((thing) => thing.items);
    const figures = { recipe: bench.recipe.name, size: bench.recipe.size ?? '', factor };
    const title = say(
      factor === 1
        ? bench.recipe.size === undefined
          ? text('Section of {recipe} along its middle line, to scale', figures)
          : text('Section of {recipe}, size {size}, along its middle line, to scale', figures)
        : bench.recipe.size === undefined
          ? text('Section of {recipe} along its middle line, thickness {factor} times as large', figures)
          : text('Section of {recipe}, size {size}, along its middle line, thickness {factor} times as large', figures),
    );
    const drawing = { title, seenFrom: 'edge', ...boundsOf(items), items, things: measured } as const;
    return knownBy(thinnest === undefined ? drawing : { ...drawing, thinnest }, reasons);
  });
}

/** 1, 2 or 5 times a power of ten, not larger; at least as it is. */
function roundFactor(factor: number): number {
  if (factor <= 1) return 1;
  const power = 10 ** Math.floor(Math.log10(factor));
  return ([5, 2, 1].find((each) => each * power <= factor * (1 + 1e-9)) ?? 1) * power;
}

function toolThing(bench: Bench, { bounds }: PartFrame, { height, say }: Writing): Thing {
  const name = bench.recipe.stack?.tool ?? 'tool';
  const source = { path: `${bench.recipe.stack?.path ?? 'stack'}.tool`, name };
  const pen = penOf('tool', source);
  const out = 2 * height;
  const [left, right] = [bounds.low.x - out, bounds.high.x + out];
  return {
    layer: 'tool',
    source,
    what: text('tool {name}', { name }),
    where: text('below all layers'),
    size: text('not drawn'),
    items: [
      pen.line(
        [
          { x: left, y: 0 },
          { x: right, y: 0 },
          { x: right, y: -height },
          { x: left, y: -height },
        ],
        { hatch: Math.PI / 4 },
      ),
      pen.text({ x: 0, y: -2.4 * height }, height, say(text('tool {name}', { name })), { anchor: 'middle' }),
    ],
  };
}

function dimensionThing(
  { bounds, part }: PartFrame,
  { middle, high, factor }: { readonly middle: number; readonly high: number; readonly factor: number },
  { height, say }: Writing,
): Thing {
  const source = { path: `${part.path}.outline`, name: 'section' };
  const pen = penOf('dimension', source);
  const x = bounds.low.x - 2.6 * height;
  const top = middle * factor;
  const above = high * factor + 1.2 * height;
  const ends = part.ends;
  const upright = { anchor: 'middle', angle: Math.PI / 2 } as const;
  const foot = -5.4 * height;
  return {
    layer: 'dimension',
    source,
    what: text('thickness in the middle'),
    where: text('in the middle of the part'),
    size: longBy(bounds.length, middle),
    items: [
      ...(middle > 0
        ? [
            pen.line(
              [
                { x, y: top },
                { x: 0, y: top },
              ],
              { closed: false, dashed: true },
            ),
            pen.arrow({ x, y: 0 }, { x, y: top }, 'both'),
            pen.text({ x: x - 0.5 * height, y: top / 2 }, height, say(quantity(middle, LENGTH)), upright),
          ]
        : []),
      pen.arrow({ x: bounds.low.x, y: foot }, { x: bounds.high.x, y: foot }, 'both'),
      pen.text({ x: 0, y: foot + 0.5 * height }, height, say(quantity(bounds.length, LENGTH)), { anchor: 'middle' }),
      pen.text({ x: 0, y: above }, height, say(text('bag side')), { anchor: 'middle' }),
      ...(ends === undefined
        ? []
        : [
            pen.text({ x: bounds.low.x, y: above }, height, ends.from),
            pen.text({ x: bounds.high.x, y: above }, height, ends.to, { anchor: 'end' }),
          ]),
      pen.text(
        { x: bounds.low.x, y: foot - 2 * height },
        height,
        say(
          factor === 1
            ? text('Lengths and thickness are to scale.')
            : text('Lengths are to scale; thickness is {factor} times as large.', { factor }),
        ),
      ),
    ],
  };
}
