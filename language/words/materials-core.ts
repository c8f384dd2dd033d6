import { argument, COMMON_PRACTICE } from './arguments.ts';
import type { Word } from './types.ts';

/** Facts of cores and of consumables, and the price that every material has. */
export const coreFacts: readonly Word[] = [
  {
    word: 'sheet',
    at: ['core', 'consumable'],
    takes: [argument('length'), argument('length', { after: 'by' })],
    example: 'sheet 1220 mm by 2440 mm',
    meaning: 'The sheet as delivered. A larger core is pieced together.',
  },
  {
    word: 'shear_strength',
    at: ['core', 'resin', 'paste'],
    takes: [argument('pressure')],
    example: 'shear_strength 1.15 MPa',
    meaning: 'The shear stress at which it fails. Near supports a sandwich usually fails here first.',
  },
  {
    word: 'compression',
    at: ['core', 'fibre', 'resin'],
    takes: [argument('pressure')],
    example: 'compression 1.3 MPa',
    meaning:
      'Crushing strength. A third of it is what a bag may press for hours; full vacuum is nine tonnes on a square metre.',
    source: COMMON_PRACTICE,
  },
  {
    word: 'resists',
    at: ['core', 'consumable'],
    takes: [argument('word', { words: ['styrene'] })],
    example: 'resists styrene',
    meaning: 'Resin with styrene may touch it.',
  },
  {
    word: 'attacked_by',
    at: ['core', 'consumable'],
    takes: [argument('word', { words: ['styrene'] })],
    example: 'attacked_by styrene',
    meaning: 'Polyester and vinyl ester dissolve it (EPS, XPS): use epoxy.',
  },
  {
    word: 'styrene',
    at: ['value of resists'],
    example: 'resists styrene',
    meaning: 'The solvent in polyester and vinyl ester.',
  },
  {
    word: 'limit',
    at: ['core', 'consumable', 'tool', 'fabric', 'resin', 'clause of fact'],
    takes: [argument('temperature')],
    example: 'limit 80 degC',
    meaning:
      'The hottest it may get. The schedule of cure and postcure, and the heat of a thick laminate, must stay below it. Tape and mesh usually fail first.',
  },
  {
    word: 'bends',
    at: ['core'],
    takes: [argument('length'), argument('length', { after: 'at' })],
    example: 'bends 1.2 m at 12 mm',
    meaning:
      'The smallest radius that a sheet of this thickness bends to, cold and not scored. Tighter, it breaks or springs off the skin.',
  },
  {
    word: 'surface',
    at: ['core'],
    takes: [argument('areal weight')],
    example: 'surface 200 g/m2',
    meaning: 'Resin that the cut cells of one face drink: weight in the part and resin in the pot.',
  },
  {
    word: 'moisture',
    at: ['core', 'fabric', 'fibre', 'clause of core', 'clause of insert'],
    takes: [argument('ratio', { basis: ['by weight'] })],
    example: 'moisture <= 12 % by weight',
    default: '12 % by weight',
    source: COMMON_PRACTICE,
    meaning: 'How wet wood or natural fibre may be. Wetter, the water comes out as bubbles or rots the core.',
  },
  {
    word: 'thickness',
    at: ['core', 'consumable'],
    takes: [argument('length')],
    example: 'thickness 6 mm',
    meaning: 'How thick it is.',
  },
  {
    word: 'price',
    at: ['fabric', 'prepreg', 'resin', 'gelcoat', 'catalyst', 'paste', 'core', 'consumable'],
    takes: [argument('money'), argument('length', { after: 'at', optional: true })],
    example: 'price 21 EUR/m2 at 12 mm',
    meaning:
      'What it costs, per m2, m, kg, litre or piece; a sheet per thickness. Write ? while you do not know: the cost then says what is missing.',
  },
];

export const consumableFacts: readonly Word[] = [
  {
    word: 'kind',
    at: ['consumable'],
    takes: [argument('word')],
    example: 'kind feed_line',
    meaning: 'What it is for. A step takes only consumables of its kind.',
  },
  {
    word: 'weight',
    at: ['consumable', 'fabric'],
    takes: [argument('areal weight')],
    example: 'weight 85 g/m2',
    meaning: 'What a square metre of it weighs, dry.',
  },
  {
    word: 'bore',
    at: ['consumable'],
    takes: [argument('length')],
    example: 'bore 10 mm',
    meaning: 'Inner diameter of a tube. It stays full of resin: 86 g in each metre of 10 mm bore.',
    source: 'geometry, resin of 1.1 g/cm3',
  },
  {
    word: 'width',
    at: ['consumable'],
    takes: [argument('length')],
    example: 'width 12 mm',
    meaning: 'How wide a tape is.',
  },
  {
    word: 'coverage',
    at: ['consumable'],
    takes: [argument('coverage')],
    example: 'coverage 40 m2/L',
    meaning: 'How far it goes, for one coat: area per kilogram or litre, or weight per area.',
  },
  {
    word: 'dry',
    at: ['consumable'],
    takes: [argument('time')],
    example: 'dry 15 min',
    meaning:
      'How long one coat needs before the next, or before anything is laid on it. Laid on wet release, the part sticks.',
  },
  {
    word: 'takes',
    at: ['consumable'],
    takes: [argument('areal weight')],
    example: 'takes 50 g/m2',
    meaning:
      'Resin that stays in it and is thrown away with it: peel ply, mesh, bleeder. It has to be mixed all the same.',
  },
  {
    word: 'open',
    at: ['consumable'],
    takes: [argument('ratio')],
    example: 'open 1.5 %',
    meaning:
      'The open area of a perforated film. Under mesh it wants at least 1 %, or the fill is slow; over a wet layup it sets the bleed.',
  },
  {
    word: 'life',
    at: ['consumable', 'resin', 'gelcoat', 'catalyst', 'paste'],
    takes: [argument('time')],
    example: 'life 12 months',
    meaning: 'How long it keeps on the shelf.',
  },
];
