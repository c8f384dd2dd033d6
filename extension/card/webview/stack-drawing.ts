import type { StackBand, StackPicture } from '../../../language/protocol/layer-card.ts';
import { bandHeights, labelPlaces } from './heights.ts';
import { h, type VElement } from './node.ts';
import { say, type Words } from './words.ts';

const wide = { band: 170, gap: 26, all: 360 };
const high = { stack: 300, least: 6, face: 18, label: 15 };

/** The stack in section, bag face on top, and a sentence on its scale. */
export function stackDrawing(picture: StackPicture, words: Words): readonly VElement[] {
  // drawn from the bag side down
  const bands = [...picture.layers].reverse();
  const { heights, toScale } = bandHeights(
    bands.map(({ thickness }) => thickness),
    high.stack,
    high.least,
  );
  const tops = heights.map((_, i) => high.face + heights.slice(0, i).reduce((sum, height) => sum + height, 0));
  const middles = heights.map((height, i) => (tops[i] as number) + height / 2);
  const bottom = high.face + heights.reduce((sum, height) => sum + height, 0);
  const labels = labelPlaces(middles, high.label, bottom);
  const all = Math.max(bottom, (labels.at(-1) ?? 0) + high.label / 2) + high.face;
  const shown = bands.find((band) => band.shown);
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
    h('desc', {}, bands.map(({ name, words: what }) => `${name}: ${what}`).join('; ')),
    h('defs', {}, patternsOf(bands)),
    h(
      'text',
      { class: 'face', x: wide.band / 2, y: 12, 'text-anchor': 'middle', 'aria-hidden': 'true' },
      words.bagFace,
    ),
    bands.map((band, i) => bandOf(band, tops[i] as number, heights[i] as number, labels[i] as number)),
    h('path', { class: 'tool', d: `M0 ${rounded(bottom + 1.5)}H${wide.band}`, 'aria-hidden': 'true' }),
    h(
      'text',
      { class: 'face', x: wide.band / 2, y: rounded(bottom + 14), 'text-anchor': 'middle', 'aria-hidden': 'true' },
      words.toolFace,
    ),
  );
  return [drawing, h('p', { class: 'help' }, scaleWords(picture, toScale, words))];
}

function scaleWords({ total, above, below }: StackPicture, toScale: boolean, words: Words): string {
  const scale = total === undefined ? words.unknownHeight : say(toScale ? words.toScale : words.notToScale, { total });
  const more = above + below === 0 ? '' : ` ${say(words.moreLayers, { above, below })}`;
  return `${scale}${more} ${words.hatching}`;
}

export const bandId = ({ key }: StackBand): string => `band-${encodeURIComponent(key)}`;

function bandOf(band: StackBand, top: number, height: number, label: number): VElement {
  const narrow = band.whole || band.kind === 'core' || band.kind === 'coat' ? 0 : wide.band * 0.22;
  const box = { x: narrow, y: rounded(top), width: wide.band - 2 * narrow, height: rounded(height) };
  const middle = rounded(top + height / 2);
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
    },
    h('title', {}, `${band.name}: ${band.words}`),
    h('rect', { class: 'fill', ...box }),
    hatchesOf(band).map((id) => h('rect', { class: 'hatch', ...box, fill: `url(#${id})` })),
    h('rect', { class: 'edge', ...box }),
    h('path', { class: 'lead', d: `M${wide.band - narrow} ${middle}L${wide.band + wide.gap - 6} ${rounded(label)}` }),
    h(
      'text',
      { x: wide.band + wide.gap, y: rounded(label + 4) },
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
