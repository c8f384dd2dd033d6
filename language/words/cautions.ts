import type { Hazard } from './hazard.ts';

/**
 * What can hurt whoever builds the part, where it applies, and what is usually done about it. Limits are listed by the agency that set them,
 * with their date and how they were come by; agencies differ up to tenfold and revise them, so no figure here stands for the data sheet.
 */

/** Ends every caution: nothing of it replaces these. */
export const DEFERRAL =
  'Safety data sheets, local rules and, where they ask for one, a licensed person have the last word.';

/** Verbs that handle liquid resin; another step does where it names a resin or a paste. */
export const WET = [
  'lay',
  'wet out',
  'roll out',
  'catalyse',
  'mix',
  'tint',
  'degas',
  'infuse',
  'seal core',
  'bed',
  'fill',
  'bond',
  'fillet',
  'pour',
  'fair',
  'seal edge',
  'seal hole',
  'paint',
];
const CUTS = ['trim', 'drill', 'sand', 'cut', 'fair'];
const SHEETS = 'safety data sheets of the class, from memory';

export const hazards: readonly Hazard[] = [
  {
    name: 'styrene',
    title: 'Styrene',
    brief: 'Styrene: extraction on, filter for organic vapour, no flame.',
    harm: 'Its vapour dulls and gives headaches, burns, and over years harms hearing; it is classed as a possible to probable carcinogen.',
    molarMass: 0.10415,
    limits: [
      {
        agency: 'OSHA (US), permissible',
        values: [
          { ppm: 100, over: '8 h' },
          { ppm: 200, over: 'ceiling' },
        ],
        date: 2016,
        mark: 'read on a public page',
      },
      {
        agency: 'NIOSH (US), recommended',
        values: [{ ppm: 50, over: 'up to 10 h' }],
        date: 2007,
        mark: 'read on a public page',
      },
      { agency: 'NIOSH (US), recommended', values: [{ ppm: 100, over: '15 min' }], date: 2007, mark: 'from memory' },
      { agency: 'ACGIH (US)', values: [{ ppm: 20, over: '8 h' }], date: 1997, mark: 'read on a public page' },
      { agency: 'ACGIH (US)', values: [{ ppm: 10, over: '8 h' }], date: 2020, mark: 'from memory' },
      {
        agency: 'HSE (UK), EH40/2005 4th ed.',
        values: [
          { ppm: 100, over: '8 h' },
          { ppm: 250, over: '15 min' },
        ],
        date: 2020,
        mark: 'from memory',
      },
      {
        agency: 'Sweden, as quoted by NIOSH EPHB 306-17a',
        values: [{ ppm: 20 }],
        date: 2007,
        mark: 'read on a public page',
      },
    ],
    source:
      'NIOSH EPHB 306-17a 2007 (open moulding measured at 52 ppm, closed at 2.36 ppm); NTP and IARC as quoted by OSHA 2016, read; IARC 2A since 2018, from memory',
    applies: [{ verbs: WET, families: ['polyester', 'vinyl_ester'] }],
    rules: [
      'coat/wet-film',
      'coat/laminated-early',
      'vacuum/styrene-boils',
      'core/attacked-by-styrene',
      'resin/too-much-wet-on-wet',
      'coat/between-coats',
      'bond/incompatible',
    ],
  },
  {
    name: 'peroxide',
    title: 'Peroxide and accelerator',
    brief: 'Peroxide: goggles, water within reach; it never meets accelerator, metal or flame outside the resin.',
    harm: 'A splash of peroxide blinds. Peroxide and accelerator that meet undiluted react explosively: the accelerator is stirred fully into the resin first, the peroxide last. Store it cool, away from both.',
    limits: [
      {
        agency: 'NIOSH (US), recommended, for ketone peroxide',
        values: [{ says: '0.2 ppm (1.5 mg/m3) ceiling' }],
        date: 2007,
        mark: 'from memory',
      },
      { agency: 'OSHA (US), for ketone peroxide', values: [{ says: 'no limit set' }], date: 2007, mark: 'from memory' },
    ],
    source:
      'NIOSH Pocket Guide, from memory; order of mixing: a trade article, read, and every safety data sheet, from memory',
    applies: [
      { verbs: ['catalyse', 'accelerate'] },
      { verbs: WET, families: ['polyester', 'vinyl_ester', 'acrylic'] },
      { verbs: WET, kinds: ['catalyst'] },
    ],
    rules: [
      'resin/promoter-and-peroxide',
      'resin/catalyst-range',
      'resin/wrong-catalyst',
      'resin/small-batch-scale',
      'record/catalyst-mass',
    ],
  },
  {
    name: 'epoxy',
    title: 'Epoxy',
    brief:
      'Epoxy sensitises: nitrile or laminate gloves, sleeves, air; no bare skin on uncured resin, hardener or prepreg.',
    harm: 'It sensitises the skin, through the air too, and so does half-cured dust. Once allergic means always allergic: exposure has to stop. Latex gloves hardly protect, nitrile ones are changed often.',
    limits: [],
    source: 'HSE RR79; EU-OSHA, OSHwiki; leaflet of the British Society for Cutaneous Allergy, read',
    applies: [
      { verbs: WET, families: ['epoxy'] },
      { verbs: ['lay', 'cut', 'debulk'], kinds: ['prepreg'] },
      { verbs: ['trim', 'sand'], families: ['epoxy'] },
    ],
    rules: [
      'resin/ratio',
      'resin/bag-after-open-time',
      'coat/recoat-missed',
      'prepreg/no-thaw',
      'prepreg/no-debulk',
      'cure/demould-early',
      'bond/open-time',
    ],
  },
  {
    name: 'glass_dust',
    title: 'Dust of glass and basalt',
    brief: 'Glass dust: extraction at the cut, mask, goggles, sleeves; cut it wet if it can be.',
    harm: 'It itches, inflames eyes and airways, and carries half-cured resin with it.',
    limits: [
      {
        agency: 'NIOSH (US), recommended, fibrous glass',
        values: [{ says: '3 thin fibres/cm3 and 5 mg/m3 in all', over: 'up to 10 h' }],
        date: 2007,
        mark: 'from memory',
      },
      {
        agency: 'OSHA (US), dust not otherwise listed',
        values: [{ says: '15 mg/m3 in all, 5 mg/m3 respirable', over: '8 h' }],
        date: 2016,
        mark: 'read on a public page',
      },
    ],
    source: 'NIOSH and OSHA pages; the OSHA figures were read for mineral wool',
    applies: [{ verbs: CUTS, fibres: ['glass', 'basalt'] }],
    rules: [
      'bond/not-keyed',
      'core/unsealed-edge',
      'insert/hole-misses',
      'insert/oversize-and-plug',
      'bond/peel-ply-coated',
      'bond/waxed-surface',
      'coat/laminated-late',
      'coat/recoat-missed',
    ],
  },
  {
    name: 'carbon_dust',
    title: 'Dust of carbon',
    brief: 'Carbon dust conducts: keep it off switchgear; extraction at the cut, mask, goggles, sleeves.',
    harm: 'It shorts electrics, and its splinters and dust hurt skin, eyes and airways.',
    limits: [
      {
        agency: 'HSE (UK), general dust',
        values: [{ says: '10 mg/m3 inhalable, 4 mg/m3 respirable', over: '8 h' }],
        date: 2020,
        mark: 'from memory',
      },
    ],
    source: `no limit of its own; ${SHEETS}`,
    applies: [{ verbs: CUTS, fibres: ['carbon'] }],
    rules: ['bond/dissimilar'],
  },
  {
    name: 'dust',
    title: 'Dust of foam, wood and fillers',
    brief: 'Dust of foam, wood and filler: extraction, mask, no flame.',
    harm: 'Fine dust of wood and foam burns, and silica, hollow spheres and wood dust harm the lungs.',
    limits: [
      {
        agency: 'HSE (UK), general dust',
        values: [{ says: '10 mg/m3 inhalable, 4 mg/m3 respirable', over: '8 h' }],
        date: 2020,
        mark: 'from memory',
      },
    ],
    source: SHEETS,
    applies: [
      { verbs: ['shape', 'chamfer', 'score', 'perforate'] },
      { verbs: ['fair', 'bond', 'fillet', 'pour', 'bed'], kinds: ['filler'] },
    ],
    rules: ['core/no-chamfer', 'core/not-perforated', 'core/unsealed-hole', 'bond/fillet-missing'],
  },
  {
    name: 'spray_adhesive',
    title: 'Spray adhesive',
    brief: 'Spray adhesive burns: extract it, nothing that sparks.',
    harm: 'Solvent and propellant are flammable, and the mist is breathed.',
    limits: [],
    source: 'OSHA 1910.106 and 107; HSE, dangerous substances and explosive atmospheres, from memory',
    applies: [{ verbs: ['tack'] }],
    rules: ['bond/tack-too-much'],
  },
  {
    name: 'runaway',
    title: 'Runaway pot',
    brief: 'A pot that gets hot: carry it outdoors and spread it thin; no foam or glass pots.',
    harm: 'Mixed resin in bulk heats itself: a quarter of a kilogram can melt its cup, one was seen at 105 degC. It smokes, burns and gives off fumes.',
    limits: [],
    source: 'pages of resin makers and a trade article, read',
    applies: [
      {
        verbs: ['mix', 'catalyse', 'infuse', 'pour'],
        families: ['epoxy', 'polyester', 'vinyl_ester', 'polyurethane', 'acrylic'],
      },
      {
        verbs: ['lay'],
        families: ['epoxy', 'polyester', 'vinyl_ester', 'polyurethane', 'acrylic'],
        potOver: 0.25,
      },
    ],
    rules: ['resin/batch-too-big', 'resin/exotherm-in-pot', 'flow/pot-runs-dry'],
  },
  {
    name: 'static',
    title: 'Static',
    brief: 'Film and dry cloth carry static: unroll them away from open solvent.',
    harm: 'Unrolling film and waxing plastic tables charges them; the spark stings, and it lights solvent vapour.',
    limits: [],
    source: "builders' log, read; common practice",
    applies: [{ verbs: ['bag', 'film', 'perforated'] }],
    rules: ['bag/missing'],
  },
  {
    name: 'vacuum',
    title: 'Vacuum',
    brief:
      'Full vacuum presses with ten tonnes a square metre: no glass pots, nobody leans over the trap, oil mist of the pump goes outdoors.',
    harm: 'Pots and hollow parts that are not made for vacuum implode; glass flies. The pump blows oil mist.',
    limits: [],
    source: "worked out: 101 325 Pa, ISO 2533; oil mist: a builder's page, read",
    applies: [{ verbs: ['vacuum', 'leak test', 'trap', 'degas', 'bag down'] }],
    rules: [
      'vacuum/no-trap',
      'vacuum/no-leak-test',
      'vacuum/pump-too-weak',
      'core/bag-crush',
      'resin/degas',
      'vacuum/no-second-test',
    ],
  },
  {
    name: 'heat',
    title: 'Heat',
    brief: 'Heat: gloves, no solvent in oven or tent, nobody leaves a heater alone.',
    harm: 'Hot tools burn, warm resin gives off more vapour, and solvent or resin beside a heater takes fire.',
    limits: [],
    source: 'common practice',
    applies: [{ verbs: ['ramp', 'postcure', 'heat', 'dry'] }],
    rules: [
      'cure/over-limit',
      'cure/demould-hot',
      'cure/ramp',
      'cure/postcure-ramp',
      'cure/short',
      'cure/no-postcure',
      'cure/free-postcure-distorts',
      'core/wet-wood',
      'fabric/not-dried',
      'core/outgas-rising',
      'core/bend-cold',
      'resin/below-temperature',
      'air/mould-cold',
    ],
  },
  {
    name: 'lifting',
    title: 'Lifting',
    brief: 'Heavy: two people or a hoist, the way cleared first, feet and fingers out from under it.',
    harm: 'Backs, feet and fingers: a part lets go of its tool with a jerk, and the tool is heavier still.',
    limits: [],
    source:
      'HSE (UK) INDG143: 25 kg held close for a man, 16 kg for a woman, less away from the body (2020, from memory); NIOSH lifting equation 1994: 23 kg at best (from memory)',
    applies: [{ verbs: ['demould', 'keep', 'postcure'], heavierThan: 15 }],
    rules: [],
  },
  {
    name: 'solvent',
    title: 'Solvent',
    brief: 'Solvent: open the doors, gloves, no flame; soaked rags into a closed metal bin.',
    harm: 'It burns, its vapour dulls, and it strips the skin.',
    limits: [],
    source: `limits differ with the solvent: its data sheet says them; ${SHEETS}`,
    applies: [{ verbs: ['clean', 'release', 'wipe', 'prime', 'paint'] }],
    rules: ['release/missing', 'release/not-dry', 'release/late', 'release/too-few-coats'],
  },
];

/** Hazards that a verb can have, whatever it works with. */
export const hazardsOfVerb = (verb: string): readonly Hazard[] =>
  hazards.filter(({ applies }) => applies.some(({ verbs }) => verbs.includes(verb)));

export const hazard = (name: string): Hazard | undefined => hazards.find((each) => each.name === name);
