import { argument } from './arguments.ts';
import type { Word } from './types.ts';

/** The kinds of layer: lines of a stack, from the tool outwards. */
export const layers: readonly Word[] = [
  {
    word: 'coat',
    at: ['stack'],
    takes: [
      argument('name', { names: ['own'] }),
      argument('name', { names: ['gelcoat', 'resin', 'paste'] }),
      argument('length', { basis: ['wet', 'dry'] }),
    ],
    example: 'coat gel gel_grey 500 um wet, brush, 2 coats',
    meaning:
      'Something liquid: gelcoat, clear, flow coat, paint. Say how thick (wet or dry) or how much on a square metre.',
  },
  {
    word: 'ply',
    at: ['stack'],
    takes: [
      argument('name', { names: ['own'] }),
      argument('name', { names: ['fabric', 'prepreg'] }),
      argument('angle', { after: 'at', optional: true }),
      argument('name', { after: 'with', names: ['resin'], optional: true }),
    ],
    example: 'ply outer triax_680 at 0 deg, to trim',
    meaning:
      'One piece of cloth over the whole part, its warp at this angle. It goes to the finished edge unless a clause says otherwise.',
  },
  {
    word: 'strip',
    at: ['stack'],
    takes: [
      argument('name', { names: ['own'] }),
      argument('name', { names: ['fabric', 'prepreg'] }),
      argument('angle', { after: 'at', optional: true }),
      argument('name', { after: 'with', names: ['resin'], optional: true }),
    ],
    example: 'strip keel uni_c300 at 0 deg, 60 mm by 620 mm, centred at (100 mm, 0 mm)',
    meaning: 'A narrow piece of cloth, width by length, laid on or let into a groove of the core.',
  },
  {
    word: 'patch',
    at: ['stack'],
    takes: [
      argument('name', { names: ['own'] }),
      argument('name', { names: ['fabric', 'prepreg'] }),
      argument('angle', { after: 'at', optional: true }),
      argument('name', { after: 'with', names: ['resin'], optional: true }),
    ],
    example: 'patch pad biax_440 at 45 deg, over mount',
    meaning: 'A local reinforcement over a zone or a shape of its own.',
  },
  {
    word: 'core',
    at: ['stack'],
    takes: [argument('name', { names: ['own'] }), argument('name', { names: ['core'] }), argument('length')],
    example: 'core body foam_80 20 mm, perforate 2 mm every 50 mm, groove for keel',
    meaning: 'The light middle of the sandwich. Both skins need resin: a closed core must be perforated for infusion.',
  },
  {
    word: 'insert',
    at: ['stack'],
    takes: [argument('name', { names: ['own'] }), argument('name', { names: ['core'] }), argument('length')],
    example: 'insert bolts birch_ply 20 mm, rectangle 110 mm by 80 mm, centred at (210 mm from heel, 0 mm)',
    meaning: 'A solid piece let into the core where a bolt, hinge or seal presses.',
  },
  {
    word: 'repeat',
    at: ['stack'],
    takes: [argument('count')],
    example: 'repeat 3, stagger 60 mm { ply mat mat_300 }',
    meaning: 'Lays the group again. The copies are called mat.1, mat.2 and so on.',
  },
  {
    word: 'mirror',
    at: ['stack'],
    takes: [argument('name', { after: 'about', names: ['layer'], optional: true })],
    example: 'mirror about b',
    meaning:
      'Repeats the plies and strips laid so far in reverse, so that the part stays flat when it cools. After a core it mirrors the skin below it. Copies are called a.m.',
  },
  {
    word: 'about',
    at: ['clause of mirror'],
    takes: [argument('name', { names: ['layer'] })],
    example: 'mirror about b',
    meaning: 'The layer in the middle, which is laid only once.',
  },
  {
    word: 'tool',
    at: ['value of stack'],
    takes: [argument('name', { names: ['tool'] })],
    example: 'stack from tool sled_tool { ply a biax_440 at 0 deg }',
    meaning: 'The stack begins on this tool, its first layer against it.',
  },
  {
    word: 'caul',
    at: ['value of stack'],
    takes: [argument('name', { names: ['consumable'] })],
    example: 'stack from caul alu_2 { ply a biax_440 at 0 deg }',
    meaning: 'The stack begins on a loose plate, not on a tool.',
  },
];

/** What a coat is put on with. */
export const coatClauses: readonly Word[] = [
  {
    word: 'brush',
    at: ['clause of coat', 'clause of step'],
    example: 'coat gel gel_grey 500 um wet, brush, 2 coats',
    meaning: 'Put on with a brush.',
  },
  {
    word: 'roller',
    at: ['clause of coat', 'clause of step'],
    example: 'coat flow polyester_ortho 250 g/m2, roller',
    meaning: 'Put on with a roller.',
  },
  {
    word: 'spray',
    at: ['clause of coat', 'clause of step'],
    example: 'coat gel gel_grey 500 um wet, spray',
    meaning: 'Sprayed. Mind the overspray on the flange: sealant tape does not hold on it. Breathing protection.',
  },
  {
    word: 'coats',
    at: ['clause of coat', 'clause of step'],
    takes: [argument('count', { before: true })],
    example: 'coat gel gel_grey 500 um wet, brush, 2 coats',
    meaning:
      'In how many coats, each as thick as is said. Gelcoat goes wet on wet: a second coat on a gelled one wrinkles it.',
    instead: ['coat'],
  },
  {
    word: 'waxed',
    at: ['clause of coat'],
    example: 'coat flow polyester_ortho 250 g/m2, waxed',
    meaning:
      'With wax in it, so that it cures hard in air. Nothing bonds to the wax: never in the mould, never under another layer.',
  },
  {
    word: 'dark',
    at: ['clause of coat', 'clause of step'],
    example: 'coat gel gel_black 500 um wet, brush, dark',
    meaning:
      'A dark colour, or clear over carbon. In the sun such a face gets far hotter than a white one: the resin under it must bear that, or the cloth prints through.',
  },
  {
    word: 'wet',
    at: ['clause of coat', 'clause of step'],
    example: 'coat gel gel_grey 500 um wet',
    meaning: 'Measured as wet film, with the comb.',
  },
];
