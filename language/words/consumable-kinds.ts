import { argument } from './arguments.ts';
import type { Word } from './types.ts';

interface KindRow {
  readonly kind: string;
  readonly meaning: string;
  readonly example: string;
}

const rows: readonly KindRow[] = [
  {
    kind: 'release',
    meaning:
      'Keeps the part from bonding to the tool: wax, film or semi-permanent. Every coat must be dry before the next, all of them before the layup.',
    example: 'semi_permanent',
  },
  {
    kind: 'cleaner',
    meaning: 'Takes old release and dirt off the tool. Solvent: ventilate, no flame.',
    example: 'mould_cleaner',
  },
  {
    kind: 'tape',
    meaning:
      'Sealant tape between bag and flange. It goes on the clean flange, liner on, before anything dry that sheds fibres.',
    example: 'sealant_12',
  },
  {
    kind: 'mask',
    meaning: 'Masking tape that keeps coats off the flange or an edge. Not the sealant tape.',
    example: 'masking_25',
  },
  {
    kind: 'tack',
    meaning:
      'Spray adhesive that holds dry cloth in place. Infusion grade and only a mist: too much stays soft and weakens the bond between layers.',
    example: 'spray_tack',
  },
  {
    kind: 'peel',
    meaning:
      'Peel ply: tears off the cured part and leaves a clean rough face to bond to. Release-treated ones leave a film that nothing sticks to.',
    example: 'nylon_85',
  },
  {
    kind: 'perforated',
    meaning: 'Perforated release film: lets air and a little resin through and releases from breather or mesh.',
    example: 'film_p3',
  },
  { kind: 'film', meaning: 'Solid release film: lets nothing through.', example: 'solid_25' },
  {
    kind: 'bleeder',
    meaning: 'Cloth that takes up surplus resin from a wet layup or a prepreg. What it takes is the bleed.',
    example: 'glass_100',
  },
  {
    kind: 'breather',
    meaning:
      'Fleece that keeps a path for the air to the port all over the part. Soaked with resin it no longer breathes.',
    example: 'poly_150',
  },
  {
    kind: 'mesh',
    meaning:
      'Flow mesh: the resin runs in it over the part and then down into the cloth. It stops short of the edge, or the resin races to the vent.',
    example: 'mesh_130',
  },
  {
    kind: 'caul',
    meaning: 'A plate on the layup that makes the bag face flat and smooth. Its edge stays off the edge radius.',
    example: 'alu_2',
  },
  {
    kind: 'intensifier',
    meaning: 'A rubber piece that presses the bag into an inside corner where it would bridge.',
    example: 'silicone_6',
  },
  {
    kind: 'dam',
    meaning: 'A strip at the edge of the layup: keeps resin in and stops the bag from rounding the edge.',
    example: 'cork_5',
  },
  {
    kind: 'feed_line',
    meaning:
      'Spiral tube or channel that spreads resin along the feed or gathers air along the vent. Bare on the laminate it leaves a print line.',
    example: 'spiral_10',
  },
  { kind: 'tube', meaning: 'Plain tube between pot, bag, trap and pump. It stays full of resin.', example: 'tube_10' },
  {
    kind: 'trap',
    meaning: 'Catch pot between bag and pump, with the gauge on it. Without one, resin reaches the pump.',
    example: 'pot_5',
  },
  {
    kind: 'thermocouple',
    meaning: 'Probe for the temperature of the part or the tool, not of the air in the oven.',
    example: 'probe_k',
  },
  {
    kind: 'bag',
    meaning: 'Bagging film. It must reach into every corner: pleats give it the length.',
    example: 'film_50',
  },
  {
    kind: 'pigment',
    meaning: 'Colour paste that is stirred into the mix. Too much of it keeps the resin from curing well.',
    example: 'grey_paste',
  },
  {
    kind: 'filler',
    meaning: 'Powder that thickens or lightens a paste. The dust is harmful to breathe.',
    example: 'colloidal_silica',
  },
  { kind: 'abrasive', meaning: 'Paper or discs for sanding.', example: 'paper_80' },
  {
    kind: 'container',
    meaning: 'Cups, pots and brushes that go into the bin. No foam or glass pots: a hot mix melts or breaks them.',
    example: 'cup_1l',
  },
];

/** What a consumable is for: the word behind `kind`. A step takes consumables of its kind only. */
export const consumableKinds: readonly Word[] = rows.map(({ kind, meaning, example }) => ({
  word: kind,
  at: ['value of kind'],
  takes: [argument('name', { names: ['consumable'], optional: true })],
  meaning,
  example: `consumable ${example} { kind ${kind} }`,
}));
