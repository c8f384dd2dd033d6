import { argument } from './arguments.ts';
import type { Word } from './types.ts';

/** What a file of the book may hold: one entry each, visible from every other file. */
export const entries: readonly Word[] = [
  {
    word: 'notation',
    at: ['book'],
    takes: [argument('count')],
    example: 'notation 1',
    default: 'the newest',
    meaning:
      'First line of a file: the version of the notation that it is written in. A word never changes its meaning within a version.',
  },
  {
    word: 'shop',
    at: ['book'],
    takes: [argument('text')],
    example: 'shop "Hollow Tarn Workshop" { currency EUR }',
    meaning:
      'The workshop itself: wage, air, pump, people, balance and habits. There is one in a book, and every recipe takes its defaults from it.',
  },
  {
    word: 'fibre',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'fibre e_glass "E-glass" { density 2550 kg/m3 }',
    meaning:
      'The fibre that a cloth is made of: its density and stiffness. Thickness and mass of every ply follow from the density.',
  },
  {
    word: 'fabric',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'fabric biax_440 like stock { price 5.10 EUR/m2 }',
    meaning:
      'A dry cloth or mat from the roll: its layers with their directions and weights, the width of the roll and the price.',
  },
  {
    word: 'prepreg',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'prepreg carbon_pp_200 "Carbon twill in epoxy film" { resin 42 % by weight }',
    meaning:
      'A cloth that comes with its resin and is kept in the freezer. It ages at room temperature, so out-life and thaw time belong to it.',
  },
  {
    word: 'resin',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'resin epoxy_slow "Infusion epoxy, slow hardener" { mix 100:31 by weight }',
    meaning:
      'A laminating or infusion resin, mixed from two parts (mix) or started by a peroxide (catalyst). The data are those of the mixed resin.',
  },
  {
    word: 'gelcoat',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'gelcoat gel_grey "Isophthalic gelcoat" { wet_film 400 um to 600 um }',
    meaning:
      'The pigmented resin against the mould. Its film and the window for the first ply decide whether it wrinkles or cracks.',
  },
  {
    word: 'catalyst',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'catalyst mekp_50 "Ketone peroxide, 50 % in plasticiser" { density 1.16 g/cm3 }',
    meaning:
      'The peroxide that starts a polyester or vinyl ester (the shop says catalyst, it is an initiator). Never let it meet an accelerator undiluted: they react explosively.',
  },
  {
    word: 'paste',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'paste filleting_mix "Epoxy for fillets" { from epoxy_laminating }',
    meaning:
      'A thickened resin for bonding, bedding, filleting or fairing: bought ready, or mixed from a resin and fillers.',
  },
  {
    word: 'core',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'core foam_80 "Closed-cell foam" { density 80 kg/m3 }',
    meaning: 'A sheet of foam, balsa, plywood or glass plate that goes between the skins or into them as an insert.',
  },
  {
    word: 'consumable',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'consumable spiral_10 "Spiral tube, 10 mm" { kind feed_line }',
    meaning:
      'What is used up and does not stay in the part: release, tape, film, peel ply, mesh, tube and the like; also pigments and fillers.',
  },
  {
    word: 'tool',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'tool sled_tool { flat 1600 mm by 700 mm }',
    meaning:
      'A mould, table, plate or caul that the part is laid on: its size and flange, the heat it bears, how many there are and what they cost.',
  },
  {
    word: 'recipe',
    at: ['book'],
    takes: [argument('name', { names: ['own'] }), argument('text', { optional: true })],
    example: 'recipe sled_deck "Rescue sled deck" { quantity 12 }',
    meaning:
      'How one part is built: its outline, the stack of layers, the steps of the process, and what it must weigh, cost and carry.',
  },
  {
    word: 'record',
    at: ['book'],
    takes: [
      argument('name', { names: ['recipe'] }),
      argument('name', { names: ['size'], optional: true }),
      argument('date'),
      argument('text', { optional: true }),
    ],
    example: 'record sled_deck short 2026-05-14 "no. 31" { mass 1.74 kg }',
    meaning:
      'What really happened on one part: lots, readings, times, mass. It is compared with the plan of the revision that it names.',
  },
];

/** What any line or entry may carry. */
export const everywhere: readonly Word[] = [
  {
    word: 'like',
    at: ['anywhere'],
    takes: [argument('name', { words: ['stock'], names: ['material', 'tool', 'recipe'] })],
    example: 'fabric biax_440 like stock { price 5.10 EUR/m2 }',
    meaning:
      'Takes everything over from another entry; the lines in the braces replace what differs. A name of the stock library may only be used again with `like stock`.',
  },
  {
    word: 'stock',
    at: ['anywhere'],
    example: 'fabric biax_440 like stock { price 5.10 EUR/m2 }',
    meaning:
      'The library of generic materials that comes with the tool: values of the class, not of a product. Replace them by your data sheets.',
  },
  {
    word: 'note',
    at: ['anywhere'],
    takes: [argument('text')],
    example: 'ply inner triax_680 at 0 deg, note "Mark the middle line before it goes down."',
    meaning: 'Words for the bench: they are printed on the build sheet beside the line.',
  },
  {
    word: 'accept',
    at: ['anywhere'],
    takes: [argument('name'), argument('text')],
    example: 'bag film_50, accept bag/few-pleats "The tool is flat."',
    meaning:
      'Silences one rule on this line and says why. The build sheet lists it; one that silences nothing is reported.',
  },
  {
    word: 'source',
    at: ['anywhere'],
    takes: [argument('text')],
    example: 'price 5.10 EUR/m2, source "Data sheet of 2026-03"',
    meaning:
      'Where the value comes from: data sheet, own test, standard, memory. It is shown wherever the value is used.',
  },
];

/** The reserved words: they link what stands before with what follows and can be no names. */
export const connectives: readonly Word[] = [
  {
    word: 'at',
    at: ['anywhere'],
    example: 'ply outer triax_680 at 0 deg',
    meaning: 'A place, an angle, a temperature or a condition: where or under what the value holds.',
  },
  {
    word: 'by',
    at: ['anywhere'],
    example: 'roll 1270 mm by 50 m',
    meaning:
      'The second dimension of a size, the length of a landing, or what a share is reckoned on (by weight, by volume).',
  },
  {
    word: 'on',
    at: ['anywhere'],
    example: 'check barcol >= 20 on skin',
    meaning: 'The layer, face or day that is meant.',
  },
  {
    word: 'of',
    at: ['anywhere'],
    example: 'expect fill <= 60 % of gel',
    meaning: 'What a share is a share of, or what each of several measures.',
  },
  {
    word: 'from',
    at: ['anywhere'],
    example: 'feed f1 spiral_10 from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)',
    meaning: 'Where something begins, or the end that a place is measured from.',
  },
  {
    word: 'to',
    at: ['anywhere'],
    example: 'lay outer to inner',
    meaning: 'Up to: the end of a range, of a run of layers, of a line, or the temperature of a ramp.',
  },
  {
    word: 'over',
    at: ['anywhere'],
    example: 'patch pad biax_440 at 45 deg, over mount',
    meaning: 'On top of a zone, across a length, or shared out over a number of parts.',
  },
  { word: 'under', at: ['anywhere'], example: 'expect sag under rider <= 12 mm', meaning: 'The load that is meant.' },
  {
    word: 'with',
    at: ['anywhere'],
    example: 'lay skin with vinylester_infusion',
    meaning: 'The resin that is used here, or the catalyst share that a value holds for.',
  },
  {
    word: 'in',
    at: ['anywhere'],
    example: 'leak test 5 mbar in 10 min',
    meaning: 'During this time, or in this layer. Behind a number it is the inch.',
  },
  {
    word: 'for',
    at: ['anywhere'],
    example: 'pot_life 110 min at 23 degC for 150 g',
    meaning: 'The mass that a pot life was measured with, or the strip that a groove is for.',
  },
  {
    word: 'onto',
    at: ['anywhere'],
    example: 'ply outer triax_680 at 0 deg, wrap onto body by 25 mm',
    meaning: 'The layer that a wrapped ply lands on.',
  },
  { word: 'as', at: ['anywhere'], example: 'triax_680 as outer', meaning: 'Under this name, or in this role.' },
  {
    word: 'until',
    at: ['anywhere'],
    example: 'wait until tacky',
    meaning: 'Goes on up to a state: tacky, gel, cool, hard.',
  },
  {
    word: 'when',
    at: ['anywhere'],
    example: 'clamp f1 when full',
    meaning: 'As soon as this has happened: the part is full, the front is at a point, another line is running.',
  },
  {
    word: 'after',
    at: ['anywhere'],
    example: 'tg 66 degC after 8 h at 50 degC',
    meaning: 'Later than this by the time that stands before.',
  },
  {
    word: 'within',
    at: ['anywhere', 'clause of step'],
    takes: [argument('time'), argument('word', { after: 'of', words: ['mix', 'gel', 'sand', 'thaw'], optional: true })],
    example: 'vacuum 650 mbar gauge, within 75 min of mix',
    meaning:
      'A deadline: the step must be done in this time. A bag that comes after the resin has gone stiff does not press the layers together.',
  },
  { word: 'and', at: ['anywhere'], example: 'sand and wipe', meaning: 'Both things, one and the other.' },
];
