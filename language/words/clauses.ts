import { argument, COMMON_PRACTICE, FROM_MEMORY, share } from './arguments.ts';
import type { Place, Word } from './types.ts';

const cloth: readonly Place[] = ['clause of ply', 'clause of strip', 'clause of patch'];
const solid: readonly Place[] = ['clause of core', 'clause of insert'];

/** Clauses of cloth: how far a piece goes, how it is cut and turned, what it holds. */
export const clothClauses: readonly Word[] = [
  {
    word: 'net',
    at: cloth,
    example: 'ply inner triax_680 at 0 deg, net',
    default: 'net',
    meaning: 'The piece ends at the finished edge.',
  },
  {
    word: 'to',
    at: cloth,
    takes: [argument('word', { words: ['trim'] })],
    example: 'ply outer biax_440 at 0 deg, to trim',
    meaning: 'The piece runs out past the finished edge by the trim allowance and is cut off after the cure.',
  },
  {
    word: 'wrap',
    at: ['clause of ply', 'clause of patch'],
    takes: [argument('name', { after: 'onto', names: ['layer'] }), argument('length', { after: 'by' })],
    example: 'ply outer triax_680 at 0 deg, wrap onto body by 25 mm',
    meaning:
      'The piece runs round the edge and lands on another layer: `onto` under what is laid later, `over` on top of it all. How far it must reach is computed from edge height, radii and landing.',
  },
  {
    word: 'over',
    at: cloth,
    takes: [argument('name', { names: ['zone'] })],
    example: 'patch pad biax_440 at 45 deg, over mount',
    meaning: 'The piece covers this zone.',
  },
  {
    word: 'oversize',
    at: cloth,
    takes: [argument('length')],
    example: 'ply outer triax_680 at 0 deg, wrap onto body by 25 mm, oversize 40 mm',
    default: 'computed',
    meaning:
      'How far the piece is cut past the outline. It is computed for a wrap; a typed value is checked against that.',
  },
  {
    word: 'darts',
    at: ['clause of ply', 'clause of patch'],
    takes: [argument('count')],
    example: 'ply outer triax_680 at 0 deg, wrap onto body by 25 mm, darts auto',
    default: 'auto',
    meaning:
      'Wedges cut out where the edge turns and the cloth would fold. `auto` computes how many and how deep; a count for the whole piece is checked.',
  },
  {
    word: 'auto',
    at: ['value of darts'],
    example: 'ply outer triax_680 at 0 deg, wrap onto body by 25 mm, darts auto',
    meaning:
      'Number, width and depth are computed from the turn of the outline and from what the cloth takes up by shear.',
  },
  {
    word: 'tab',
    at: ['clause of ply', 'clause of patch'],
    takes: [argument('length'), argument('name', { after: 'at', names: ['end'] })],
    example: 'ply outer triax_680 at 0 deg, tab 60 mm at heel',
    meaning: 'The piece is left longer at this end, to pull the part out of the tool by.',
  },
  {
    word: 'turned',
    at: cloth,
    takes: [argument('angle', { words: ['over'] })],
    example: 'ply inner triax_680 at 0 deg, turned over',
    meaning:
      '`turned over` lays the underside of the roll up; `turned 90 deg` turns the piece. Turning a 45/-45 cloth over changes nothing: it wants the quarter turn.',
  },
  {
    word: 'face',
    at: cloth,
    takes: [argument('word', { words: ['down', 'up'] })],
    example: 'ply outer triax_680 at 0 deg, face down',
    meaning: 'Which side of the cloth lies towards the tool.',
  },
  {
    word: 'lap',
    at: ['clause of ply', 'clause of repeat'],
    takes: [argument('length')],
    example: 'ply mat mat_300, lap 50 mm',
    default: '25 mm',
    source: `25 to 50 mm, ${FROM_MEMORY}`,
    meaning: 'The overlap where the roll is too narrow and pieces are joined.',
  },
  {
    word: 'join',
    at: ['clause of ply'],
    takes: [
      argument('word', { words: ['lap', 'butt'] }),
      argument('length', { optional: true }),
      argument('point', { after: 'at', optional: true }),
    ],
    example: 'ply outer triax_680 at 0 deg, join lap 50 mm at (0 mm, 0 mm)',
    meaning:
      'How and where two pieces of a ply meet. A butt join carries nothing across; joins above each other make a weak line.',
  },
  {
    word: 'fibre',
    at: [...cloth, 'clause of step'],
    takes: [share()],
    example: 'lay skin, fibre 30 % by weight',
    meaning: 'The share of fibre as laid, before any bleed.',
  },
  {
    word: 'resin',
    at: [...cloth, 'clause of step'],
    takes: [share()],
    example: 'lay a to b, resin 45 % by weight',
    meaning: 'The share of resin as laid, before any bleed: what is weighed out on the bench.',
  },
  {
    word: 'warp',
    at: cloth,
    takes: [argument('word', { after: 'along', words: ['x', 'y'] })],
    example: 'ply show twill_200 at 0 deg, warp along x',
    meaning: 'The direction of the warp on a visible face.',
  },
  {
    word: 'drop',
    at: ['clause of ply', 'clause of patch', 'clause of repeat'],
    takes: [argument('length'), argument('name', { after: 'at', names: ['end'], optional: true })],
    example: 'patch lug mat_300, rectangle 200 mm by 120 mm, drop 25 mm',
    default: '25 mm per 600 g/m2',
    source: FROM_MEMORY,
    meaning:
      'Each next one is smaller all round, or shorter at one end. All ending at one line makes a step that cracks.',
  },
  {
    word: 'by',
    at: ['clause of strip'],
    takes: [argument('length', { before: true }), argument('length')],
    example: 'strip keel uni_c300 at 0 deg, 60 mm by 620 mm',
    meaning: 'Width by length of the strip.',
  },
];

export const repeatClauses: readonly Word[] = [
  {
    word: 'stagger',
    at: ['clause of repeat', 'clause of ply'],
    takes: [argument('length')],
    example: 'repeat 3, stagger 60 mm { ply mat mat_300 }',
    default: '25 mm',
    source: 'trade magazine 2021: 25 to 38 mm',
    meaning: 'Shifts the joins of each copy, so that they do not stand above each other.',
  },
  {
    word: 'turn',
    at: ['clause of repeat'],
    takes: [argument('angle')],
    example: 'repeat 3, turn 90 deg { ply mat mat_300 }',
    meaning: 'Turns each copy by this much against the one before.',
  },
];

/** Clauses of cores and inserts. */
export const coreClauses: readonly Word[] = [
  {
    word: 'perforate',
    at: ['clause of core'],
    takes: [argument('length'), argument('length', { after: 'every' })],
    example: 'core body foam_80 20 mm, perforate 2 mm every 40 mm',
    default: '2 mm every 40 mm',
    source: `holes about 40 mm apart; 2 to 3 mm holes at 20 to 50 mm ${FROM_MEMORY}`,
    meaning: 'Holes through the core, so that resin reaches the skin on the tool. Each keeps a little resin.',
  },
  {
    word: 'every',
    at: ['clause of core', 'clause of step'],
    takes: [argument('length')],
    example: 'core body foam_80 20 mm, perforate 2 mm every 40 mm',
    meaning: 'How far apart, or after how many.',
  },
  {
    word: 'inset',
    at: solid,
    takes: [argument('length')],
    example: 'core body foam_80 12 mm, inset 40 mm',
    meaning: 'How far inside the finished edge the core ends, to the toe of its chamfer.',
  },
  {
    word: 'chamfer',
    at: solid,
    takes: [argument('angle')],
    example: 'core body foam_80 12 mm, inset 40 mm, chamfer 20 deg',
    default: '20 deg',
    source: 'common composite lay-up rules of thumb; 45 deg has been used without issue',
    meaning: 'Slope of the core edge, also as `3:1`. Steeper than 30 deg the skin bridges the kink and cracks there.',
  },
  {
    word: 'groove',
    at: ['clause of core'],
    takes: [argument('name', { after: 'for', names: ['layer'] })],
    example: 'core body foam_80 20 mm, groove for keel',
    meaning: 'A groove for a strip; place, size and depth follow from the strip.',
  },
  {
    word: 'clearance',
    at: solid,
    takes: [argument('length')],
    example: 'core body foam_80 20 mm, groove for keel, clearance 1 mm',
    default: '0.5 mm',
    source: COMMON_PRACTICE,
    meaning: 'The room on each side of a strip in its groove, or round an insert in its core.',
  },
  {
    word: 'depth',
    at: ['clause of core'],
    takes: [argument('length')],
    example: 'core body foam_80 20 mm, groove for keel, depth 2 mm',
    default: 'as thick as the strip',
    meaning:
      'How deep the grooves of this core are cut. Deeper than the strip is thick, resin or a dent fills the rest.',
  },
  {
    word: 'score',
    at: ['clause of core'],
    takes: [
      argument('length'),
      argument('length', { after: 'every' }),
      argument('word', { after: 'from', words: ['tool', 'bag'], optional: true }),
      argument('word', { words: ['face'], optional: true }),
    ],
    example: 'core body foam_80 20 mm, score 1 mm every 30 mm from bag face',
    default: 'from the face that is not looked at, else from the outside of the bend',
    meaning:
      'Cuts that let the sheet bend, down to its last millimetre. On the outside of a bend they open, on the inside they close and stop it. Open cuts fill with resin, 1 to 2 kg/m2 is not rare; unfilled they are a path for water.',
    source: COMMON_PRACTICE,
  },
  {
    word: 'pieces',
    at: ['clause of core'],
    takes: [argument('count')],
    example: 'core body foam_80 12 mm, pieces 3',
    meaning: 'In how many pieces the core is laid. Gaps over 2 mm let the resin race round.',
    source: COMMON_PRACTICE,
  },
  {
    word: 'bedded',
    at: solid,
    takes: [argument('name', { names: ['paste', 'fabric'] }), argument('areal weight', { optional: true })],
    example: 'insert hinge glass_plate 12 mm, bedded bond_paste',
    meaning:
      'Pressed into paste (or wet mat) so that no air stays under it. A hand-laid core that is not bedded sounds hollow.',
  },
  {
    word: 'seal',
    at: solid,
    takes: [argument('name', { names: ['resin', 'paste'], optional: true })],
    example: 'core body balsa_150 12 mm, seal epoxy_slow',
    meaning: 'The faces are sealed first. Unsealed balsa drinks 300 to 500 g/m2 on each face and starves the skin.',
    source: COMMON_PRACTICE,
  },
  {
    word: 'sealed',
    at: [...solid, 'clause of step'],
    example: 'drill 8 holes 8 mm in bolts, sealed',
    meaning: 'The holes or edges are closed with resin, so that no water reaches the core.',
  },
];
