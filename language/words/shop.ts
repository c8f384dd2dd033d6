import { argument, COMMON_PRACTICE, FROM_MEMORY } from './arguments.ts';
import { figureHabits } from './habits-figures.ts';
import { stackHabits } from './habits-stack.ts';
import { workHabits } from './habits-work.ts';
import type { Word } from './types.ts';

export const shop: readonly Word[] = [
  {
    word: 'currency',
    at: ['shop'],
    takes: [
      argument('word', { words: ['EUR', 'GBP', 'USD', 'CHF', 'SEK', 'NOK', 'DKK', 'PLN', 'CAD', 'AUD', 'NZD', 'JPY'] }),
    ],
    example: 'currency EUR',
    source: 'ISO 4217',
    meaning:
      'The currency of wages and prices, by its ISO 4217 code. Prices in another one are not converted: the cost then cannot be told.',
  },
  {
    word: 'labour',
    at: ['shop'],
    takes: [argument('wage')],
    example: 'labour 34 EUR/h',
    meaning: 'What an hour of hands costs, wage and everything on top of it.',
  },
  {
    word: 'overhead',
    at: ['shop'],
    takes: [argument('ratio')],
    example: 'overhead 12 %',
    default: '0 %',
    meaning: 'Rent, heat, waste and office as a share added to material, consumables, labour and mould.',
  },
  {
    word: 'ambient',
    at: ['shop'],
    takes: [argument('temperature')],
    example: 'ambient 21 degC',
    default: '20 degC',
    source: COMMON_PRACTICE,
    meaning:
      'The usual air temperature of the shop. Gel time about halves for each 10 K more, and under 15 degC many resins never cure fully.',
  },
  {
    word: 'humidity',
    at: ['shop'],
    takes: [argument('ratio', { basis: ['RH'] })],
    example: 'humidity 55 % RH',
    default: '50 % RH',
    source: COMMON_PRACTICE,
    meaning:
      'Relative humidity of the air. Near the dew point water settles on mould and cloth and spoils the bond; over 80 % epoxies blush.',
  },
  {
    word: 'elevation',
    at: ['shop'],
    takes: [argument('length')],
    example: 'elevation 340 m',
    default: '0 m',
    source: 'ISO 2533 (standard atmosphere)',
    meaning:
      'Height above the sea. It sets the air pressure that pushes the resin: at 1500 m only 83 % of it is left, so a part fills a fifth slower.',
  },
  {
    word: 'pump',
    at: ['shop'],
    takes: [argument('pressure', { basis: ['absolute', 'gauge'] })],
    example: 'pump 15 mbar absolute',
    meaning:
      'The lowest pressure that the pump leaves in a tight bag. Say absolute or gauge: a gauge reading depends on the weather and the elevation.',
  },
  {
    word: 'people',
    at: ['shop'],
    takes: [argument('count')],
    example: 'people 2',
    default: '1',
    meaning:
      'How many pairs of hands work on one part. Laying time, and so the open time that is needed, is shared by them.',
  },
  {
    word: 'scale',
    at: ['shop'],
    takes: [argument('mass')],
    example: 'scale 0.1 g',
    default: '1 g',
    source: "aircraft home-builders' list 1999: a batch under about 0.3 kg needs a 0.1 g scale",
    meaning:
      'The step of the balance. It sets the smallest batch that can still be weighed to the ratio; a 1 g scale is far off on a few grams of catalyst.',
  },
  {
    word: 'oven',
    at: ['shop'],
    takes: [argument('length'), argument('length', { after: 'by' }), argument('length', { after: 'by' })],
    example: 'oven 2400 mm by 1200 mm by 900 mm, limit 140 degC',
    meaning: 'Inside of the oven: length, width, height, and the hottest it goes. A part on its tool must go in.',
  },
  {
    word: 'habit',
    at: ['shop'],
    takes: [
      argument('word', {
        words: [
          'leak',
          'pleat',
          'flange',
          'allowance',
          'landing',
          'overlap',
          'stagger',
          'drop',
          'styrene',
          'radius',
          'edge',
          'perforation',
          'inside_radius',
          ...[...workHabits, ...stackHabits, ...figureHabits].map(({ word }) => word),
        ],
      }),
      argument('number', { repeated: true, optional: true }),
    ],
    example: 'habit leak 5 mbar in 10 min',
    meaning: 'A threshold of this shop that a rule takes instead of the common one. Its word says which.',
  },
  {
    word: 'stores',
    at: ['shop'],
    takes: [
      argument('name', { names: ['material'] }),
      argument('number'),
      argument('date', { after: 'on', optional: true }),
    ],
    example: 'stores epoxy_slow 12 kg on 2026-05-01',
    meaning: 'What is on hand of a material, counted on that day. The shopping list subtracts it.',
  },
];

/** The habits that a shop may set, each the threshold of a rule. */
export const habits: readonly Word[] = [
  ...workHabits,
  ...stackHabits,
  ...figureHabits,
  {
    word: 'leak',
    at: ['value of habit'],
    takes: [argument('pressure'), argument('time', { after: 'in' })],
    example: 'habit leak 5 mbar in 10 min',
    default: '5 mbar in 10 min',
    source: 'published limits differ sixfold; 5 mbar in 10 min is common practice',
    meaning:
      'How much a bag may lose in the leak test. More than that draws air in along the feed and leaves a dry line.',
  },
  {
    word: 'pleat',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit pleat 40 mm',
    default: '40 mm',
    source: COMMON_PRACTICE,
    meaning: 'The usual height of a pleat in the bag.',
  },
  {
    word: 'flange',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit flange 80 mm',
    default: '80 mm',
    source: FROM_MEMORY,
    meaning: 'The flange that must be left round the part for tape, vent and brake zone.',
  },
  {
    word: 'allowance',
    at: ['value of habit'],
    takes: [argument('ratio')],
    example: 'habit allowance 10 %',
    default: '10 %',
    source: '5 to 15 % from memory, less on large parts',
    meaning: 'Resin mixed on top of what the part takes. Hold it back unmixed until it is needed.',
  },
  {
    word: 'landing',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit landing 25 mm',
    default: '25 mm',
    source: '25 to 50 mm, from memory',
    meaning: 'How far a wrapped ply lies on the face that it lands on.',
  },
  {
    word: 'overlap',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit overlap 25 mm',
    default: '25 mm',
    source: '25 to 50 mm for small craft, from memory',
    meaning: 'The shortest overlap of two pieces of one ply.',
  },
  {
    word: 'stagger',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit stagger 25 mm',
    default: '25 mm',
    source: 'trade magazine 2021: 25 to 38 mm',
    meaning:
      'How far the joins of plies that follow each other stand apart. Joins above each other make a ridge and a line of bare resin.',
  },
  {
    word: 'drop',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit drop 25 mm',
    default: '25 mm per 600 g/m2',
    source: FROM_MEMORY,
    meaning: 'The run-out of a ply that ends inside the part, for 600 g/m2 of it. Steeper ends crack there first.',
  },
  {
    word: 'styrene',
    at: ['value of habit'],
    takes: [argument('pressure', { basis: ['absolute'] })],
    example: 'habit styrene 50 mbar absolute',
    default: '50 mbar absolute',
    source: '20 to 50 mbar, from memory',
    meaning: 'The deepest vacuum on wet polyester or vinyl ester. Deeper, the styrene boils and the laminate foams.',
  },
  {
    word: 'radius',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit radius 5 mm',
    default: '3 mm up to 250 g/m2, 4.5 mm up to 450 g/m2, 6 mm above',
    source: `a builders' forum: 3 mm with 200 g/m2 cloth; the rest ${FROM_MEMORY}`,
    meaning:
      'The smallest outside radius that a ply is wrapped round. On a sharper edge it lifts and leaves a channel.',
  },
  {
    word: 'inside_radius',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit inside_radius 8 mm',
    default: '6 mm, and 10 mm from 600 g/m2 on',
    source: `6 to 12 mm, ${FROM_MEMORY}`,
    meaning: 'The smallest inside radius that a ply goes into. In a sharper corner it bridges.',
  },
  {
    word: 'edge',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit edge 10 mm',
    default: '10 mm',
    source: FROM_MEMORY,
    meaning: 'The least room between an insert and the finished edge.',
  },
  {
    word: 'perforation',
    at: ['value of habit'],
    takes: [argument('length')],
    example: 'habit perforation 50 mm',
    default: '50 mm',
    source: `holes about 40 mm apart; 20 to 50 mm ${FROM_MEMORY}`,
    meaning: 'How far apart the holes of a core may stand in an infusion.',
  },
];
