import { argument } from './arguments.ts';
import { steps } from './step-row.ts';

/** Making the tool ready. */
export const mouldVerbs = steps('mould', [
  {
    word: 'clean',
    takes: [argument('name', { names: ['tool', 'consumable'] })],
    example: 'clean sled_tool',
    sheet: 'Clean {material}: take off old release, dust and tape residue.',
    meaning:
      'Takes dirt and old release off the tool. Nothing silicone in the shop: it leaves fish-eyes and spoils bonds.',
    material: ['tool', 'cleaner'],
    consumes: [{ what: 'cleaner', by: 'area', why: 'one wipe over the tool' }],
  },
  {
    word: 'release',
    takes: [argument('name', { names: ['consumable'] })],
    example: 'release semi_permanent, 5 coats new, 1 coat every 4 pulls, 20 min each',
    sheet: 'Apply {material}, {coats}; let each coat dry.',
    meaning: 'Release agent on the tool. Too few coats, or a coat that was not dry, and the part bonds to the tool.',
    default: '4 coats of wax or semi-permanent, 1 coat of film',
    source: "supplier's repair page: 3 to 4 wax coats buffed",
    material: ['release'],
    consumes: [{ what: 'release', by: 'area', why: 'each coat covers the tool, flange included' }],
    clauses: ['coats', 'each', 'new', 'every', 'bake', 'brush', 'roller', 'spray', 'limit', 'past', 'short'],
  },
  {
    word: 'heat',
    takes: [
      argument('word', { words: ['table', 'tool', 'part'] }),
      argument('temperature', { after: 'to', optional: true }),
    ],
    example: 'heat tool to 30 degC',
    sheet: 'Heat the {what} to {temperature}.',
    meaning:
      'Warms the tool or the part. The mould, not the air, sets the gel time; heat on a foam core before gel drives gas into the skin.',
    occupies: ['tool'],
    clauses: ['at'],
  },
  {
    word: 'tape',
    takes: [argument('name', { names: ['consumable'] })],
    example: 'tape sealant_12',
    sheet: 'Run {material} round the flange, liner on.',
    meaning:
      'Sealant tape on the clean flange, before any dry cloth is near: fibres under it are air channels. For masking say `mask`.',
    material: ['tape'],
    needs: ['a clean flange'],
    processes: ['bagged', 'infusion', 'prepreg'],
    clauses: ['limit', 'outside', 'past', 'short', 'perimeter', 'along', 'through'],
    instead: ['sealant', 'tacky_tape'],
    consumes: [
      { what: 'tape', by: 'perimeter', why: 'once round outside the vent, and twice the height of each pleat' },
    ],
  },
]);

/** Keeping coats off what must stay clean. The coats themselves are layers, laid by `lay`. */
export const coatVerbs = steps('coat', [
  {
    word: 'mask',
    takes: [
      argument('name', { optional: true, words: ['flange', 'edge'], names: ['consumable'] }),
      argument('name', { after: 'with', names: ['consumable'], optional: true }),
    ],
    example: 'mask flange with masking_25',
    sheet: 'Mask the {what}, with {material}.',
    meaning: 'Masking tape over what must stay clean of coats: sealant tape does not hold on overspray.',
    consumes: [{ what: 'mask', by: 'perimeter', why: 'one run round the part' }],
    clauses: ['past', 'short', 'outside', 'along', 'perimeter'],
  },
  {
    word: 'unmask',
    takes: [argument('word', { words: ['flange', 'edge'], optional: true })],
    example: 'unmask flange',
    sheet: 'Pull the masking off the {what}.',
    meaning: 'Takes the masking off again, before the coat is hard.',
    needs: ['mask'],
    clauses: ['after', 'until'],
  },
]);
