import type { WholeGroup, WholePicture } from '../../../extension/plan/webview/store.ts';
import type { PictureGroup } from '../../../language/protocol/drawing.ts';

const uri = 'file:///w/deck.layup';
const place = (line: number) => ({ uri, line, character: 4, name: `deck.layup:${line + 1}` });

const square = (half: number): string => `M${-half} ${-half}L${half} ${-half}L${half} ${half}L${-half} ${half}Z`;

export const skin: WholeGroup = {
  key: 'cloth stack.0 skin',
  order: 1,
  layer: 'cloth',
  path: 'stack.0',
  mark: 'a',
  what: 'skin: ply of cloth at 45 deg',
  where: 'all over the part',
  size: '200 mm by 200 mm',
  place: place(6),
  lastLine: 7,
  hatch: 45,
  shapes: [{ kind: 'path', d: square(100), closed: true }],
};
export const pad: WholeGroup = {
  key: 'cloth stack.1 pad',
  order: 2,
  layer: 'cloth',
  path: 'stack.1',
  mark: 'b',
  what: 'pad: patch of cloth at 0 deg',
  where: 'centred at (0 mm, 0 mm)',
  size: '40 mm by 40 mm',
  place: place(8),
  lastLine: 8,
  hatch: 0,
  shapes: [
    { kind: 'path', d: square(20), closed: true, hatch: 0 },
    { kind: 'text', x: -15, y: 15, size: 8, text: 'pad <b>' },
  ],
};
export const outline: WholeGroup = {
  key: 'outline part.outline outline',
  order: 0,
  layer: 'outline',
  path: 'part.outline',
  mark: 'c',
  what: 'outline of the part',
  where: 'x and y are measured from its middle',
  size: '200 mm by 200 mm',
  place: place(2),
  lastLine: 2,
  shapes: [{ kind: 'path', d: square(100), closed: true }],
};
/** A coat has its row and nothing to see. */
export const gel: WholeGroup = {
  key: 'coat stack.2 gel',
  order: 3,
  layer: 'coat',
  path: 'stack.2',
  mark: 'd',
  what: 'gel: coat of gelcoat',
  where: 'all over the part',
  size: 'a coat',
  place: place(9),
  lastLine: 9,
  shapes: [],
};

export const examplePicture = (groups: readonly WholeGroup[] = [gel, skin, pad, outline]): WholePicture => ({
  uri,
  view: 'plan',
  recipe: { recipe: 'deck' },
  sizes: ['short'],
  title: 'Plan of deck, seen from the bag side',
  box: [-120, -110, 240, 220],
  pitch: 2,
  layers: [
    { layer: 'coat', label: 'Coats' },
    { layer: 'cloth', label: 'Cloth' },
    { layer: 'outline', label: 'Outline of the part' },
  ],
  groups,
});

/** As a server sends what the asker has. */
export function bare({ shapes: _, ...group }: WholeGroup): PictureGroup {
  return group;
}
