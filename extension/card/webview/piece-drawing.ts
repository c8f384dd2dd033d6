import type { PiecePicture } from '../../../language/protocol/layer-card.ts';
import { h, type VElement } from '../../page/node.ts';
import type { Words } from './words.ts';

const largest = { width: 340, height: 150 };
const margin = 10;

/** The piece to cut as a rectangle, the outline's size dashed in it; both to one scale. */
export function pieceDrawing(
  { length, width, part, lanes, words: size }: PiecePicture,
  words: Words,
): readonly VElement[] {
  const [long, across] = [Math.max(length, part?.length ?? 0), Math.max(width, part?.width ?? 0)];
  if (!(long > 0 && across > 0)) return [];
  const scale = Math.min((largest.width - 2 * margin) / long, (largest.height - 2 * margin) / across);
  const [w, t] = [long * scale + 2 * margin, across * scale + 2 * margin];
  const box = (each: { readonly length: number; readonly width: number }) => ({
    x: rounded((w - each.length * scale) / 2),
    y: rounded((t - each.width * scale) / 2),
    width: rounded(each.length * scale),
    height: rounded(each.width * scale),
  });
  const cuts = Array.from({ length: Math.max(0, Math.min(lanes, 20) - 1) }, (_, i) => {
    const { x, y, width: wide, height } = box({ length, width });
    return h('path', { class: 'lane', d: `M${x} ${rounded(y + (height * (i + 1)) / lanes)}h${wide}` });
  });
  return [
    h(
      'svg',
      {
        class: 'piece',
        viewBox: `0 0 ${rounded(w)} ${rounded(t)}`,
        width: rounded(w),
        role: 'img',
        'aria-label': `${words.piece}: ${size}`,
      },
      h('title', {}, `${words.piece}: ${size}`),
      h('desc', {}, words.pieceHelp),
      h('rect', { class: 'cut', ...box({ length, width }) }),
      cuts,
      part === undefined ? [] : h('rect', { class: 'outline', ...box(part) }),
    ),
    part === undefined ? [] : h('p', { class: 'help' }, words.pieceHelp),
  ].flat();
}

const rounded = (value: number): number => Math.round(value * 100) / 100;
