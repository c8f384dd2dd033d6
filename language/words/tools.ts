import { argument, COMMON_PRACTICE, FROM_MEMORY } from './arguments.ts';
import type { Word } from './types.ts';

export const toolFacts: readonly Word[] = [
  {
    word: 'flat',
    at: ['tool'],
    takes: [argument('length'), argument('length', { after: 'by' })],
    example: 'flat 1600 mm by 700 mm',
    meaning: 'Length and width of the surface that parts can be laid on, flange included.',
  },
  {
    word: 'curved',
    at: ['tool'],
    takes: [
      argument('word', { words: ['along', 'across'] }),
      argument('length'),
      argument('word', { words: ['hollow', 'crowned'], optional: true }),
    ],
    example: 'curved along 2.4 m, across 0.6 m crowned',
    default: 'hollow',
    source: `${COMMON_PRACTICE}: most moulds are female`,
    meaning:
      'The radius of the tool face along or across the part. Outline and places are measured along the face, as a paper template laid on it tells them; layers further from the face are shorter in a hollow and longer on a crown. Curved both ways, cloth has too much at its edge; a core bends only so far.',
  },
  {
    word: 'file',
    at: ['tool'],
    takes: [argument('text')],
    example: 'file "moulds/deck-mould.stl"',
    meaning: 'A drawing of the surface, found beside this file and never outside the workspace.',
  },
  {
    word: 'flange',
    at: ['tool'],
    takes: [argument('length')],
    example: 'flange 110 mm',
    default: '100 mm',
    source: `100 to 150 mm, ${FROM_MEMORY}`,
    meaning: 'The clean rim outside the part: it must hold vent, brake zone and sealant tape.',
  },
  {
    word: 'draft',
    at: ['tool'],
    takes: [argument('angle')],
    example: 'draft 3 deg',
    meaning: 'How far the sides lean out. Deep sides under 2 deg wedge the part and break the mould.',
  },
  {
    word: 'depth',
    at: ['tool'],
    takes: [argument('length')],
    example: 'depth 120 mm',
    meaning: 'How deep (or how high, if male) the tool is.',
  },
  {
    word: 'count',
    at: ['tool'],
    takes: [argument('count')],
    example: 'count 2',
    default: '1',
    meaning: 'How many of them there are: as many parts may cure at a time.',
  },
  {
    word: 'cost',
    at: ['tool'],
    takes: [argument('money'), argument('count', { after: 'over' })],
    example: 'cost 900 EUR over 150 parts',
    meaning: 'What the tool costs and how many parts it lasts; each part pays its share.',
  },
  { word: 'handed', at: ['tool'], example: 'handed', meaning: 'There is a left and a right one.' },
];
