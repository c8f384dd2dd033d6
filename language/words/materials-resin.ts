import { argument, atTemperature, COMMON_PRACTICE, range, share } from './arguments.ts';
import type { Place, Word } from './types.ts';

const liquids: readonly Place[] = ['resin', 'gelcoat', 'paste'];
const held = [argument('ratio', { after: 'with', basis: ['by weight', 'by volume'], optional: true })] as const;

/** Facts of resins, gelcoats, catalysts and pastes. One fact a line; viscosity, gel and tg are repeated for other conditions. */
export const resinFacts: readonly Word[] = [
  {
    word: 'family',
    at: [...liquids, 'prepreg'],
    takes: [argument('word', { words: ['epoxy', 'polyester', 'vinyl_ester', 'polyurethane', 'acrylic', 'phenolic'] })],
    example: 'family epoxy',
    meaning:
      'The chemistry. Polyester does not bond to cured epoxy, and styrene dissolves some foams: rules go by this word.',
  },
  {
    word: 'mix',
    at: liquids,
    takes: [argument('ratio', { basis: ['by weight', 'by volume'] })],
    example: 'mix 100:31 by weight',
    meaning:
      'Parts of resin to parts of hardener. Off the ratio it stays rubbery or tacky for ever; never change it to change the speed.',
  },
  {
    word: 'tolerance',
    at: liquids,
    takes: [argument('ratio')],
    example: 'tolerance 3 %',
    default: '3 %',
    source: "one 4:1 epoxy, home-builders' list 1999; 3 to 5 % is typical from memory",
    meaning: 'How far the mix may be off its ratio. Together with the step of the balance it gives the smallest batch.',
  },
  {
    word: 'catalyst',
    at: liquids,
    takes: [
      argument('name', { names: ['catalyst'] }),
      share(),
      share({ optional: true }),
      share({ after: 'to', optional: true }),
    ],
    example: 'catalyst mekp_50 1.5 % by weight, 1 % to 2.5 % by weight',
    meaning:
      'The peroxide, its usual share and the range that still cures. Too little stays under-cured for ever, too much overheats and cracks.',
  },
  {
    word: 'accelerated',
    at: ['resin', 'gelcoat', 'paste'],
    example: 'accelerated',
    meaning: 'The accelerator is already in it: only the catalyst is stirred in. Never add more accelerator.',
  },
  {
    word: 'dark',
    at: ['gelcoat', 'consumable'],
    example: 'dark',
    meaning:
      'A gelcoat, paint or pigment of a dark colour. A face of it gets so hot in the sun that a resin cured cold softens.',
  },
  {
    word: 'air_inhibited',
    at: ['resin', 'gelcoat'],
    example: 'air_inhibited',
    meaning:
      'Its free surface stays tacky in air. Good under the next layer, but the last one needs wax, film or a flow coat.',
  },
  {
    word: 'waxed',
    at: ['resin', 'gelcoat'],
    example: 'waxed',
    meaning:
      'It holds wax, which rises to its face while it cures: a flow coat that is dry to the touch. Nothing laid on it bonds, so it is never used against the mould.',
  },
  {
    word: 'styrene',
    at: ['resin', 'gelcoat', 'paste'],
    takes: [share()],
    example: 'styrene 40 % by weight',
    meaning:
      'Its share of styrene: it dissolves EPS and XPS, boils under deep vacuum and has an exposure limit. Ventilate.',
  },
  {
    word: 'density',
    at: [...liquids, 'catalyst', 'fibre', 'core', 'prepreg', 'consumable'],
    takes: [argument('density')],
    example: 'density 1.10 g/cm3 +- 0.02 g/cm3',
    meaning: 'Mass of a volume: of the cured resin, the bare fibre, the core. In a prepreg it is that of its resin.',
  },
  {
    word: 'viscosity',
    at: liquids,
    takes: [argument('viscosity'), atTemperature()],
    example: 'viscosity 290 mPa.s at 23 degC',
    meaning:
      'How thick the mixed resin is at this temperature. Over about 400 mPa.s an infusion is slow and needs degassing.',
    source: COMMON_PRACTICE,
  },
  {
    word: 'pot_life',
    at: liquids,
    takes: [argument('time'), atTemperature(), argument('mass', { after: 'for', optional: true })],
    example: 'pot_life 110 min at 23 degC for 150 g',
    meaning:
      'How long this mass stays usable in the pot. A bigger pot heats itself and goes off much sooner: name the mass it was measured with.',
  },
  {
    word: 'open',
    at: ['resin', 'paste'],
    takes: [argument('time'), atTemperature()],
    example: 'open 90 min at 23 degC',
    meaning: 'How long a spread film may still be worked and pressed. A bag that comes later no longer consolidates.',
  },
  {
    word: 'gel',
    at: liquids,
    takes: [argument('time'), atTemperature(), ...held],
    example: 'gel 18 min at 20 degC with 1.5 % by weight',
    meaning: 'When it stops flowing. An infusion must be full well before, and a bag must hold its vacuum until after.',
  },
  {
    word: 'recoat',
    at: liquids,
    takes: [...range('time'), atTemperature()],
    example: 'recoat 40 min to 24 h at 20 degC',
    meaning: 'The window in which the next layer bonds by itself. Later it must be sanded first.',
  },
  {
    word: 'laminate',
    at: ['gelcoat'],
    takes: [...range('time'), atTemperature()],
    example: 'laminate 90 min to 12 h at 20 degC',
    meaning:
      'When the first ply may go on: too early and the gelcoat wrinkles, too late and it lets go of the mould or does not bond.',
  },
  {
    word: 'demould',
    at: liquids,
    takes: [argument('time'), atTemperature()],
    example: 'demould 18 h at 23 degC',
    meaning: 'When the part may come out. Sooner, it warps or springs off its core.',
  },
  {
    word: 'cure',
    at: [...liquids, 'prepreg'],
    takes: [argument('time'), atTemperature()],
    example: 'cure 60 min at 120 degC, ramp 1 K/min to 3 K/min',
    meaning: 'Time and temperature to full cure, by the data sheet.',
  },
  {
    word: 'ramp',
    at: ['clause of fact'],
    takes: [...range('ramp')],
    example: 'cure 60 min at 120 degC, ramp 1 K/min to 3 K/min',
    meaning: 'How fast the oven may heat up.',
  },
  {
    word: 'postcure',
    at: [...liquids, 'prepreg'],
    takes: [argument('time'), atTemperature()],
    example: 'postcure 8 h at 60 degC',
    meaning: 'The heat after the first cure that brings the full strength and heat resistance.',
  },
  {
    word: 'tg',
    at: [...liquids, 'prepreg'],
    takes: [argument('temperature'), argument('time', { after: 'after', optional: true }), atTemperature(true)],
    example: 'tg 66 degC after 8 h at 50 degC',
    meaning:
      'The temperature at which the cured resin softens, for this cure. Without postcure it is only about 17 K over the hottest it has been: a dark part sags in the sun.',
    source: "boatbuilders' forum quoting a maker",
  },
  {
    word: 'barcol',
    at: ['resin', 'gelcoat'],
    takes: [argument('number')],
    example: 'barcol 40',
    meaning: 'Hardness when fully cured, Barcol scale. Under 90 % of it the part is not ready to leave the mould.',
    source: 'ASTM D2583 (the scale); 90 % is common practice',
  },
  {
    word: 'wet_film',
    at: ['gelcoat', 'consumable'],
    takes: [...range('length')],
    example: 'wet_film 400 um to 600 um',
    default: '400 um to 600 um',
    source: "moulder's trade blog 2009 (18 to 25 mil)",
    meaning: 'The thickness of the wet film. Thinner stays soft and wrinkles under the laminate, thicker cracks.',
  },
  {
    word: 'vacuum',
    at: ['resin'],
    takes: [argument('word', { words: ['no_deeper'] }), argument('pressure', { basis: ['absolute', 'gauge'] })],
    example: 'vacuum no_deeper 50 mbar absolute',
    default: 'no_deeper 50 mbar absolute with styrene',
    source: '20 to 50 mbar, from memory',
    meaning: 'The deepest vacuum that the wet resin bears. Deeper, styrene boils and the laminate turns to foam.',
  },
  {
    word: 'from',
    at: ['paste', 'gelcoat'],
    takes: [argument('name', { names: ['resin'] })],
    example: 'from epoxy_laminating',
    meaning: 'The resin that the paste is mixed from; its ratio, times and price are taken over.',
  },
  {
    word: 'filler',
    at: ['paste'],
    takes: [argument('name', { names: ['consumable'] }), share()],
    example: 'filler colloidal_silica 4 % by weight',
    meaning: 'What is stirred in to thicken it, as a share of the finished paste. The dust is harmful: wear a mask.',
  },
  {
    word: 'no_deeper',
    at: ['value of vacuum'],
    takes: [argument('pressure', { basis: ['absolute', 'gauge'] })],
    example: 'vacuum no_deeper 50 mbar absolute',
    meaning: 'Do not pull below this pressure while the resin is wet.',
  },
];

export const resinFamilies: readonly Word[] = [
  {
    word: 'epoxy',
    at: ['value of family'],
    example: 'family epoxy',
    meaning:
      'Two parts by ratio. Bonds to nearly everything, does not smell, but sensitises the skin: once allergic, always allergic. Gloves and sleeves.',
  },
  {
    word: 'polyester',
    at: ['value of family'],
    example: 'family polyester',
    meaning: 'Started by peroxide; styrene in it. Shrinks, stays tacky in air, does not bond structurally over epoxy.',
  },
  {
    word: 'vinyl_ester',
    at: ['value of family'],
    example: 'family vinyl_ester',
    meaning: 'Started by peroxide, tougher and more water-proof than polyester. Ordinary MEKP foams in many of them.',
  },
  {
    word: 'polyurethane',
    at: ['value of family'],
    example: 'family polyurethane',
    meaning: 'Two parts by ratio, fast, spoilt by moisture.',
  },
  {
    word: 'acrylic',
    at: ['value of family'],
    example: 'family acrylic',
    meaning: 'A liquid thermoplastic or acrylic adhesive, started by peroxide.',
  },
  {
    word: 'phenolic',
    at: ['value of family'],
    example: 'family phenolic',
    meaning: 'Gives off water as it cures and resists fire; needs its own schedule.',
  },
];
