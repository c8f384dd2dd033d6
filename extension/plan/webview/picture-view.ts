import type { PictureShape } from '../../../language/protocol/drawing.ts';
import { h, type VElement } from '../../page/node.ts';
import type { WholeGroup, WholePicture } from './store.ts';
import { type Viewport, viewBox } from './viewport.ts';
import type { Words } from './words.ts';

export interface Seen {
  readonly viewport: Viewport;
  /** layers that are switched off */
  readonly without: ReadonlySet<string>;
  /** groups that stand out: on the line of the cursor, or picked */
  readonly chosen: ReadonlySet<string>;
  /** the one that the keyboard is at */
  readonly active?: string;
}

export const groupId = (key: string): string => `thing-${encodeURIComponent(key)}`;

/** Groups that are shown, from the back to the front. */
export const shownGroups = ({ groups }: WholePicture, without: ReadonlySet<string>): readonly WholeGroup[] =>
  groups.filter(({ layer, shapes }) => !without.has(layer) && shapes.length > 0);

/** The drawing: a list of things, each of which can be picked. */
export function pictureView(
  picture: WholePicture,
  { viewport, without, chosen, active }: Seen,
  words: Words,
): VElement {
  const groups = shownGroups(picture, without);
  const current = groups.find(({ key }) => key === active);
  return h(
    'svg',
    {
      class: 'drawing',
      'data-key': 'drawing',
      'data-keys': 'drawing',
      viewBox: viewBox(viewport),
      preserveAspectRatio: 'xMidYMid meet',
      role: 'listbox',
      tabindex: 0,
      'aria-label': picture.title,
      'aria-description': words.help,
      'aria-activedescendant': current === undefined ? undefined : groupId(current.key),
    },
    h('defs', { 'data-key': 'hatches' }, patternsOf(groups, picture.pitch)),
    groups.map((group, i) => groupView(group, i, groups.length, chosen.has(group.key))),
  );
}

function groupView(group: WholeGroup, at: number, count: number, chosen: boolean): VElement {
  const { key, layer, shapes, hatch } = group;
  return h(
    'g',
    {
      id: groupId(key),
      'data-key': key,
      'data-thing': key,
      class: `thing ${layer}${chosen ? ' chosen' : ''}`,
      role: 'option',
      'aria-selected': chosen ? 'true' : 'false',
      'aria-label': wordsOf(group),
      'aria-posinset': at + 1,
      'aria-setsize': count,
    },
    h('title', {}, wordsOf(group)),
    shapes.flatMap((shape) => shapeView(shape, chosen ? hatch : undefined)),
  );
}

/** `outer: ply of triax_680 at 0 deg; all over the part; 1180 mm by 420 mm` */
export const wordsOf = ({ what, where, size }: WholeGroup): string => `${what}; ${where}; ${size}`;

function shapeView(shape: PictureShape, chosenHatch: number | undefined): readonly VElement[] {
  const fixed = { 'vector-effect': 'non-scaling-stroke' };
  switch (shape.kind) {
    case 'path': {
      const { d, closed, dashed, hatch = closed ? chosenHatch : undefined } = shape;
      return [
        // a wide line that is not seen, so that a thin one is easily met
        h('path', { class: 'reach', d, ...fixed }),
        ...(hatch === undefined ? [] : [h('path', { class: 'hatched', d, fill: `url(#${hatchId(hatch)})` })]),
        h('path', { class: `line${closed ? ' closed' : ''}${dashed ? ' dashed' : ''}`, d, ...fixed }),
      ];
    }
    case 'circle':
      return [h('circle', { class: 'line closed', cx: shape.x, cy: shape.y, r: shape.r, ...fixed })];
    case 'text': {
      const { x, y, size, text, turn, anchor } = shape;
      const place = turn === undefined ? { x, y } : { transform: `translate(${x} ${y}) rotate(${turn})` };
      return [h('text', { ...place, 'font-size': size, 'text-anchor': anchor, 'aria-hidden': 'true' }, text)];
    }
  }
}

const hatchId = (degrees: number): string => `hatch-${String(degrees).replace('.', '_')}`;

function patternsOf(groups: readonly WholeGroup[], pitch: number): VElement[] {
  const angles = groups.flatMap(({ hatch, shapes }) => [
    ...(hatch === undefined ? [] : [hatch]),
    ...shapes.flatMap((shape) => (shape.kind === 'path' && shape.hatch !== undefined ? [shape.hatch] : [])),
  ]);
  return [...new Set(angles)]
    .sort((a, b) => a - b)
    .map((degrees) =>
      h(
        'pattern',
        {
          id: hatchId(degrees),
          'data-key': hatchId(degrees),
          width: pitch,
          height: pitch,
          patternUnits: 'userSpaceOnUse',
          // counter-clockwise from level; the page counts angles the other way round
          patternTransform: `rotate(${-degrees})`,
        },
        h('path', { class: 'stroke', d: `M0 ${pitch / 2}H${pitch}`, 'vector-effect': 'non-scaling-stroke' }),
      ),
    );
}
