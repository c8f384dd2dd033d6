import { argument, atTemperature, COMMON_PRACTICE, FROM_MEMORY, share } from './arguments.ts';
import type { Word } from './types.ts';

/** Facts of fibres, dry cloth and prepreg. */
export const clothFacts: readonly Word[] = [
  {
    word: 'fibre',
    at: ['fabric', 'prepreg'],
    takes: [argument('name', { names: ['fibre'] })],
    example: 'fibre e_glass',
    meaning: 'What the cloth is made of. The density of this fibre turns areal weight into thickness.',
  },
  {
    word: 'layers',
    at: ['fabric', 'prepreg'],
    takes: [
      argument('word', { words: ['random', 'woven', 'stitched', 'uni', 'braid'] }),
      argument('angle', { optional: true }),
      argument('areal weight', { repeated: true }),
    ],
    example: 'layers stitched 0 deg 280 g/m2, 45 deg 200 g/m2, -45 deg 200 g/m2',
    meaning:
      'How the cloth is made: each direction with its weight, in order from the underside of the roll, angles from the warp. Turned upside down a stitched cloth has another order.',
  },
  {
    word: 'binder',
    at: ['fabric'],
    takes: [argument('word', { words: ['styrene_soluble', 'powder', 'insoluble', 'stitched', 'none'] })],
    example: 'binder styrene_soluble',
    meaning:
      'What holds the strands of a mat. A binder for styrene never dissolves in epoxy: the mat stays stiff, will not drape and wets badly.',
    source: 'trade magazine 2016',
  },
  {
    word: 'sizing',
    at: ['fabric', 'prepreg', 'consumable'],
    takes: [argument('word', { words: ['epoxy', 'polyester', 'vinyl_ester', 'multi', 'release', 'none'] })],
    example: 'sizing multi',
    default: 'multi',
    source: COMMON_PRACTICE,
    meaning:
      'The coating that makes the fibre bond to a resin family. The wrong one leaves fibres that pull out of the resin. Release is for peel ply only.',
  },
  {
    word: 'fraction',
    at: ['fabric', 'prepreg'],
    takes: [share(), argument('word', { words: ['hand', 'bagged', 'infused', 'cured'], optional: true })],
    example: 'fraction 52 % by volume infused',
    meaning:
      'The share of fibre in the finished layer by this process. Say by weight or by volume: 65 % of glass by weight is only 45 % by volume.',
  },
  {
    word: 'roll',
    at: ['fabric', 'prepreg', 'consumable'],
    takes: [argument('length'), argument('length', { after: 'by', optional: true })],
    example: 'roll 1270 mm by 50 m',
    meaning: 'Width and length of the roll. A piece wider than the roll must be joined.',
  },
  {
    word: 'sleeve',
    at: ['fabric'],
    takes: [argument('length'), argument('length', { after: 'by', optional: true })],
    example: 'sleeve 60 mm bore by 50 m',
    meaning:
      'A braided tube: its bore as delivered and the length on the roll. Pulled wider, its angle grows and it gets shorter.',
  },
  {
    word: 'shear',
    at: ['fabric', 'prepreg'],
    takes: [argument('ratio')],
    example: 'shear 8 %',
    default: '0 %',
    meaning:
      'How much length the cloth takes up by shearing before it folds. What is left over has to be cut as darts.',
    source: COMMON_PRACTICE,
  },
  {
    word: 'permeability',
    at: ['fabric', 'consumable'],
    takes: [argument('permeability'), share({ after: 'at', optional: true })],
    example: 'permeability 1.1e-10 m2 at 52 % by volume',
    meaning:
      'How easily resin flows along the cloth, and the fibre fraction that it was measured at. A value from a strip in your own bag beats any table; tables scatter by a factor of two and more.',
    source: FROM_MEMORY,
  },
  {
    word: 'dry',
    at: ['fabric', 'core'],
    takes: [argument('time'), atTemperature(true), argument('time', { after: 'within', optional: true })],
    example: 'dry 2 h at 80 degC, use within 1 h',
    meaning:
      'It must be dried before it is used: natural fibre and wood hold water that boils into voids and spoils the bond.',
  },
  {
    word: 'use',
    at: ['fabric', 'prepreg', 'core', 'clause of fact', 'clause of step'],
    takes: [argument('time', { after: 'within' })],
    example: 'dry 2 h at 80 degC, use within 1 h',
    meaning: 'How soon it must be laid after drying, before it has drunk again.',
  },
  {
    word: 'modulus',
    at: ['fibre', 'resin', 'gelcoat', 'core', 'paste'],
    takes: [argument('pressure'), argument('word', { words: ['along', 'across'], optional: true })],
    example: 'modulus 72 GPa',
    meaning: 'Stiffness in tension. A carbon fibre has one along and another across.',
  },
  {
    word: 'strength',
    at: ['fibre', 'resin', 'core', 'paste'],
    takes: [argument('pressure'), argument('word', { words: ['along', 'across', 'compression'], optional: true })],
    example: 'strength 2000 MPa',
    meaning: 'The stress at which it breaks in tension.',
  },
  {
    word: 'strain',
    at: ['fibre', 'resin', 'core'],
    takes: [argument('ratio')],
    example: 'strain 2.5 %',
    meaning: 'How far it stretches before it breaks.',
  },
  {
    word: 'poisson',
    at: ['fibre', 'resin', 'core'],
    takes: [argument('number')],
    example: 'poisson 0.22',
    meaning: "How much it gets thinner when it is stretched (Poisson's ratio).",
  },
  {
    word: 'shear_modulus',
    at: ['fibre', 'core'],
    takes: [argument('pressure')],
    example: 'shear_modulus 27 MPa',
    meaning: 'Stiffness in shear. In a sandwich the core carries the shear, and half of the sag may come from it.',
  },
  {
    word: 'expands',
    at: ['fibre', 'resin', 'core', 'tool'],
    takes: [argument('thermal expansion')],
    example: 'expands 23e-6 /K',
    meaning: 'Growth for each kelvin. A tool that grows more than the part locks or cracks it when both cool.',
  },

  // prepreg
  {
    word: 'resin',
    at: ['prepreg'],
    takes: [share()],
    example: 'resin 42 % by weight',
    meaning: 'The share of resin that the prepreg comes with.',
  },
  {
    word: 'freezer',
    at: ['prepreg'],
    takes: [argument('time'), atTemperature()],
    example: 'freezer 12 months at -18 degC',
    meaning: 'How long it keeps in the freezer. Past that date it may be stiff, untacky and only half cure.',
  },
  {
    word: 'out_life',
    at: ['prepreg'],
    takes: [argument('time'), atTemperature()],
    example: 'out_life 21 days at 21 degC',
    meaning: 'How long it may be out of the freezer in all, before it is cured. The records add it up roll by roll.',
  },
  {
    word: 'thaw',
    at: ['prepreg'],
    takes: [argument('time')],
    example: 'thaw 6 h',
    default: '6 h',
    source: COMMON_PRACTICE,
    meaning:
      'How long it needs in its shut bag to reach room temperature. Opened cold, it draws dew, and the water boils out in the cure.',
  },
];

/** How a cloth is made: the first word behind `layers`. */
export const clothStyles: readonly Word[] = [
  {
    word: 'random',
    at: ['value of layers'],
    takes: [argument('areal weight')],
    example: 'layers random 300 g/m2',
    meaning: 'A mat without direction: it needs no angle and drapes anywhere, but holds little fibre.',
  },
  {
    word: 'woven',
    at: ['value of layers'],
    takes: [argument('angle'), argument('areal weight', { repeated: true })],
    example: 'layers woven 0 deg 100 g/m2, 90 deg 100 g/m2',
    meaning: 'Woven: both directions in one layer. It shears into curves, and the yarns are slightly crimped.',
  },
  {
    word: 'stitched',
    at: ['value of layers'],
    takes: [argument('angle'), argument('areal weight', { repeated: true })],
    example: 'layers stitched 45 deg 220 g/m2, -45 deg 220 g/m2',
    meaning:
      'Straight layers stitched on top of each other, in this order from the underside of the roll. Which side is up matters.',
  },
  {
    word: 'uni',
    at: ['value of layers'],
    takes: [argument('angle', { optional: true }), argument('areal weight')],
    example: 'layers uni 300 g/m2',
    meaning: 'All fibres one way, along the roll unless an angle is given.',
  },
  {
    word: 'braid',
    at: ['value of layers'],
    takes: [argument('angle'), argument('areal weight')],
    example: 'layers braid 45 deg 200 g/m2',
    meaning: 'Braided both ways at plus and minus this angle. The angle changes with the girth that it is pulled over.',
  },
];

/** What holds a mat, what a fibre is coated with, what a fraction was made by. */
export const clothChoices: readonly Word[] = [
  {
    word: 'styrene_soluble',
    at: ['value of binder'],
    example: 'binder styrene_soluble',
    meaning: 'An emulsion that the styrene of polyester and vinyl ester dissolves. Not for epoxy.',
  },
  {
    word: 'powder',
    at: ['value of binder'],
    example: 'binder powder',
    meaning:
      'A powder binder: goes with epoxy by its makers, though some find that the mat stays stiff. Try a piece first.',
  },
  {
    word: 'insoluble',
    at: ['value of binder'],
    example: 'binder insoluble',
    meaning: 'Does not dissolve: keeps the mat in place while resin runs through it. For infusion.',
  },
  {
    word: 'hand',
    at: ['value of fraction', 'value of process'],
    example: 'fraction 50 % by weight hand',
    meaning: 'Wetted and rolled out by hand, no bag. Much resin, air pressed out by the roller.',
  },
  {
    word: 'bagged',
    at: ['value of fraction', 'value of process'],
    example: 'process bagged with epoxy_slow at 21 degC',
    meaning: 'Wetted by hand, then pressed under a vacuum bag that must be closed before the resin stiffens.',
  },
  {
    word: 'infused',
    at: ['value of fraction'],
    example: 'fraction 52 % by volume infused',
    meaning: 'As the cloth comes out of resin infusion under full vacuum.',
  },
  {
    word: 'cured',
    at: ['value of fraction'],
    example: 'fraction 54 % by volume cured',
    meaning: 'As it comes out of the cure, bleed included.',
  },
  {
    word: 'infusion',
    at: ['value of process'],
    example: 'process infusion with epoxy_slow at 23 degC',
    meaning:
      'Everything is laid dry under the bag; then the vacuum pulls the resin through. Time to lay, but one leak spoils the part.',
  },
  {
    word: 'prepreg',
    at: ['value of process'],
    example: 'process prepreg { thaw carbon_pp_200, 6 h }',
    meaning: 'Cloth that brings its resin, cured hot under a bag. Thaw, debulk and the temperature of the part decide.',
  },
];
