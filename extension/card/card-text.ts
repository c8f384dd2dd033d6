import type { LayerCard } from '../../language/protocol/layer-card.ts';
import type { WireReason } from '../../language/protocol/place.ts';
import type { Words } from './webview/words.ts';

/** A card as plain text, for the clipboard: headings, a figure a line, reasons indented. */
export function cardText({ title, kind, recipe, figures, piece, touches, missing }: LayerCard, words: Words): string {
  const rows = [
    ...(piece === undefined
      ? []
      : [[words.piece, piece.words], ...(piece.reach === undefined ? [] : [[words.reach, piece.reach]])]),
    ...figures.map(({ label, value }) => [label, value ?? '?']),
  ];
  const wide = Math.max(0, ...rows.map(([label = '']) => label.length));
  const reasons = figures.filter(({ value, reasons: list }) => value !== undefined && list.length > 0);
  return [
    `${title}: ${kind}`,
    recipe,
    '',
    ...rows.map(([label = '', value = '']) => `${label.padEnd(wide)}  ${value}`),
    ...(touches.length === 0
      ? []
      : ['', ...touches.map(({ side, name, words: how }) => `${words[side]}: ${name}, ${how}`)]),
    ...(missing.length === 0 ? [] : ['', ...missing.map(({ words: why }) => `? ${why}`)]),
    ...reasons.flatMap(({ label, value, reasons: list }) => ['', `${label} ${value}`, ...chain(list, '  ')]),
    '',
  ].join('\n');
}

function chain(reasons: readonly WireReason[], indent: string): string[] {
  return reasons.flatMap(({ words, source, at, reasons: under }) => [
    `${indent}${words}${source === undefined ? '' : `; ${source}`}${at === undefined ? '' : ` (${at.name})`}`,
    ...chain(under, `${indent}  `),
  ]);
}
