import type { LayerCard } from '../../../language/protocol/layer-card.ts';

const place = (line: number) => ({ uri: 'file:///w/deck.layup', line, character: 4, name: `deck.layup:${line + 1}` });

/** A card as the server sends it; `more` in place of its parts. */
export const exampleCard = (more: Partial<LayerCard> = {}): LayerCard => ({
  uri: 'file:///w/deck.layup',
  layer: { recipe: 'deck', key: 'skin' },
  title: 'skin',
  kind: 'ply of cloth at 0 deg, layer 1 of 3',
  recipe: 'deck',
  summary: 'skin, ply of cloth: 400 g wet.',
  place: place(12),
  stack: {
    layers: [
      {
        key: 'skin',
        name: 'skin',
        kind: 'ply',
        words: 'ply of cloth',
        thickness: 0.0005,
        directions: [0, 45, 135],
        whole: true,
        shown: true,
      },
      {
        key: 'mat',
        name: 'mat',
        kind: 'ply',
        words: 'ply of mat',
        thickness: 0.001,
        directions: [],
        whole: true,
        shown: false,
      },
      {
        key: 'foam',
        name: 'foam',
        kind: 'core',
        words: 'core of foam',
        thickness: 0.02,
        directions: [],
        whole: true,
        shown: false,
      },
    ],
    total: '21.5 mm',
    below: 0,
    above: 0,
  },
  piece: {
    length: 1.2,
    width: 0.5,
    part: { length: 1, width: 0.4 },
    lanes: 1,
    words: '1200 mm by 500 mm',
    reach: '50 mm past the outline',
    reasons: [],
  },
  figures: [
    {
      name: 'layer_mass',
      label: 'wet mass',
      value: '400 g',
      reasons: [
        {
          words: 'dry mass and resin',
          at: place(3),
          reasons: [{ words: 'fibre fraction', source: 'typed', reasons: [] }],
        },
      ],
    },
    { name: 'layer_cost', label: 'cost', reasons: [] },
  ],
  missing: [{ words: 'the price of cloth is not known', at: place(4), reasons: [] }],
  touches: [
    { side: 'below', name: 'tool', words: 'the tool face' },
    { side: 'above', layer: { recipe: 'deck', key: 'mat' }, name: 'mat', words: 'ply of mat', place: place(13) },
  ],
  ...more,
});
