import type { StackBand, StackPicture } from '../../../language/protocol/layer-card.ts';
import { h, type VElement } from '../../page/node.ts';
import { layOut, type PlacedBand, type StackSize } from './stack-layout.ts';
import { say, type Words } from './words.ts';

const wide = { gap: 26, all: 360 };
const size: StackSize = { top: 18, width: 170, height: 300, least: 6, label: 15 };

/** The stack in section, bag face on top, and a sentence on its scale. */
export function stackDrawing(picture: StackPicture, words: Words): readonly VElement[] {
  const { bands, toScale, bottom, lowest } = layOut(picture.layers, size);
  const all = Math.max(bottom, lowest + size.label / 2) + size.top;
  const fromBag = [...picture.layers].reverse();
  const shown = fromBag.find((band) => band.shown);
  const face = (y: number, words: string): VElement =>
    h(
      'text',
      { class: 'face', x: size.width / 2, y: rounded(y), 'text-anchor': 'middle', 'aria-hidden': 'true' },
      words,
    );
  const drawing = h(
    'svg',
    {
      class: 'stack',
      viewBox: `0 0 ${wide.all} ${rounded(all)}`,
      role: 'listbox',
      tabindex: 0,
      'data-keys': 'stack',
      'aria-label': words.stack,
      'aria-description': words.stackHelp,
      'aria-activedescendant': shown === undefined ? undefined : bandId(shown),
    },
    h('title', {}, words.stack),
    h('desc', {}, fromBag.map(({ name, words: what }) => `${name}: ${what}`).join('; ')),
    h('defs', {}, patternsOf(fromBag)),
    face(12, words.bagFace),
    bands.map((placed) => bandOf(placed, fromBag.indexOf(placed.band) + 1, fromBag.length)),
    h('path', { class: 'tool', d: `M0 ${rounded(bottom + 1.5)}H${size.width}`, 'aria-hidden': 'true' }),
    face(bottom + 14, words.toolFace),
  );
  return [drawing, h('p', { class: 'help' }, scaleWords(picture, toScale, words))];
}

function scaleWords({ total, above, below }: StackPicture, toScale: boolean, words: Words): string {
  const scale = total === undefined ? words.unknownHeight : say(toScale ? words.toScale : words.notToScale, { total });
  const more = above + below === 0 ? '' : ` ${say(words.moreLayers, { above, below })}`;
  return `${scale}${more} ${words.hatching}`;
}

export const bandId = ({ key }: StackBand): string => `band-${encodeURIComponent(key)}`;

function bandOf({ band, box, label }: PlacedBand, position: number, count: number): VElement {
  const rect = { x: rounded(box.x), y: rounded(box.y), width: rounded(box.width), height: rounded(box.height) };
  const lead = `M${rounded(box.x + box.width)} ${rounded(box.y + box.height / 2)}L${size.width + wide.gap - 6} ${rounded(label)}`;
  return h(
    'g',
    {
      id: bandId(band),
      'data-key': band.key,
      'data-step': band.key,
      role: 'option',
      class: `band ${band.kind}${band.shown ? ' shown' : ''}`,
      'aria-selected': band.shown ? 'true' : 'false',
      'aria-label': `${band.name}: ${band.words}`,
      'aria-posinset': position,
      'aria-setsize': count,
    },
    h('title', {}, `${band.name}: ${band.words}`),
    h('rect', { class: 'ground', ...rect }),
    h('rect', { class: 'fill', ...rect }),
    hatchesOf(band).map((id) => h('rect', { class: 'hatch', ...rect, fill: `url(#${id})` })),
    h('rect', { class: 'edge', ...rect }),
    h('path', { class: 'lead', d: lead }),
    h(
      'text',
      { x: size.width + wide.gap, y: rounded(label + 4) },
      `${band.shown ? '\u25b6 ' : ''}${shortened(band.name)}`,
    ),
  );
}

const shortened = (name: string): string => (name.length > 22 ? `${name.slice(0, 21)}\u2026` : name);

/** A hatching for each direction of the fibres; others for what has none. */
export function hatchesOf({ kind, directions }: StackBand): string[] {
  if (kind === 'core') return ['hatch-cells'];
  if (kind === 'insert') return ['hatch-grain'];
  if (kind === 'coat') return [];
  return directions.length === 0 ? ['hatch-mat'] : directions.map((angle) => `hatch-${angle}`);
}

function patternsOf(bands: readonly StackBand[]): VElement[] {
  return [...new Set(bands.flatMap(hatchesOf))].sort().map((id) => {
    const pattern = (size: number, turn: number, ...marks: readonly VElement[]): VElement =>
      h(
        'pattern',
        {
          id,
          'data-key': id,
          width: size,
          height: size,
          patternUnits: 'userSpaceOnUse',
          patternTransform: `rotate(${turn})`,
        },
        marks,
      );
    const dot = (x: number, y: number, r: number): VElement => h('circle', { class: 'mark', cx: x, cy: y, r });
    if (id === 'hatch-cells')
      return pattern(
        11,
        0,
        h('circle', { class: 'cell', cx: 3, cy: 3, r: 2 }),
        h('circle', { class: 'cell', cx: 8.5, cy: 8.5, r: 2 }),
      );
    if (id === 'hatch-mat') return pattern(7, 0, dot(1.5, 1.5, 0.9), dot(5, 4.5, 0.9));
    if (id === 'hatch-grain') return pattern(5, 90, h('path', { class: 'line', d: 'M0 2.5H5' }));
    // counter-clockwise from level; the page counts angles the other way round
    return pattern(6, -Number(id.slice('hatch-'.length)), h('path', { class: 'line', d: 'M0 3H6' }));
  });
}

const rounded = (value: number): number => Math.round(value * 100) / 100;
