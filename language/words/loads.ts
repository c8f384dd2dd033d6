import { argument, FROM_MEMORY } from './arguments.ts';
import type { Word } from './types.ts';

export const loadFacts: readonly Word[] = [
  { word: 'supports', at: ['load'], takes: [argument('length'), argument('word', { words: ['apart'] })], example: 'supports 760 mm apart', meaning: 'The part lies on two supports across its width, this far apart.' },
  { word: 'clamped', at: ['load'], takes: [argument('name', { after: 'at', names: ['end'], optional: true })], example: 'clamped at heel', meaning: 'The part is held fast here, so that it cannot tilt.' },
  { word: 'weight', at: ['load'], takes: [argument('mass'), argument('length', { after: 'over', optional: true }), argument('point', { after: 'at', optional: true })], example: 'weight 95 kg over 120 mm at middle', meaning: 'A mass that rests on it, taken times gravity. `over 120 mm` is a strip across the whole width.' },
  { word: 'force', at: ['load'], takes: [argument('force'), argument('length', { after: 'over', optional: true }), argument('point', { after: 'at', optional: true })], example: 'force 900 N over 120 mm at middle', meaning: 'A force on the part.' },
  { word: 'pressure', at: ['load'], takes: [argument('pressure')], example: 'pressure 6 kPa', meaning: 'A pressure over the whole face.' },
  { word: 'factor', at: ['load'], takes: [argument('number')], example: 'factor 3', default: '2', source: FROM_MEMORY, meaning: 'By how much the load is multiplied before it is compared with the strength. Where people depend on the part, codes and licensed practice set it.' },
];

/** The quantities that `expect` and `check` may ask for. */
export const expectations: readonly Word[] = [
  { word: 'mass', at: ['value of expect'], takes: [argument('mass')], example: 'expect mass <= 2.3 kg', meaning: 'Mass of the finished part.' },
  { word: 'thickness', at: ['value of expect'], takes: [argument('length')], example: 'expect thickness at middle 20.8 mm to 21.5 mm', meaning: 'Thickness of the part at a place.' },
  { word: 'fibre', at: ['value of expect'], takes: [argument('ratio', { basis: ['by weight', 'by volume'] })], example: 'expect fibre >= 45 % by volume', meaning: 'The share of fibre in the laminate, core and coats left out.' },
  { word: 'resin', at: ['value of expect'], takes: [argument('mass')], example: 'expect resin <= 1.3 kg', meaning: 'The resin that has to be mixed for one part.' },
  { word: 'cost', at: ['value of expect'], takes: [argument('money')], example: 'expect cost <= 290 EUR', meaning: 'Everything for one part: material, consumables, labour, mould and overhead.' },
  { word: 'material', at: ['value of expect'], takes: [argument('money')], example: 'expect material <= 75 EUR', meaning: 'Cost of what stays in the part, with its cutting waste.' },
  { word: 'consumables', at: ['value of expect'], takes: [argument('money')], example: 'expect consumables <= 30 EUR', meaning: 'Cost of what is used up and thrown away.' },
  { word: 'labour', at: ['value of expect'], takes: [argument('money')], example: 'expect labour <= 120 EUR', meaning: 'Cost of the hands; waiting time is not counted.' },
  { word: 'mould', at: ['value of expect'], takes: [argument('money')], example: 'expect mould <= 8 EUR', meaning: 'The share of the tool that one part pays.' },
  { word: 'overhead', at: ['value of expect'], takes: [argument('money')], example: 'expect overhead <= 30 EUR', meaning: 'The shop\'s share on top.' },
  { word: 'fill', at: ['value of expect'], takes: [argument('ratio', { words: ['of'] })], example: 'expect fill <= 60 % of gel', meaning: 'How long the infusion takes until the part is full, as a time or as a share of the gel time.' },
  { word: 'sag', at: ['value of expect'], takes: [argument('length')], example: 'expect sag under rider <= 12 mm', meaning: 'How far the part bends under a load, shear of the core included.' },
  { word: 'margin', at: ['value of expect'], takes: [argument('number')], example: 'expect margin under rider >= 0', meaning: 'Strength over load times factor, less one: below zero it fails.' },
  { word: 'stiffness', at: ['value of expect'], takes: [argument('bending stiffness')], example: 'expect stiffness >= 120 N.m2', meaning: 'Bending stiffness over the width of the part.' },
  { word: 'warp', at: ['value of expect'], takes: [argument('length')], example: 'expect warp <= 1 mm', meaning: 'The bow over the length that an unsymmetric stack takes when it cools.' },
  { word: 'barcol', at: ['value of expect'], takes: [argument('number')], example: 'check barcol >= 35', source: 'ASTM D2583', meaning: 'Hardness on the Barcol scale, the mean of ten readings.' },
  { word: 'shore_d', at: ['value of expect'], takes: [argument('number')], example: 'check shore_d >= 78', source: 'ISO 868', meaning: 'Hardness on the Shore D scale. It cannot be converted to Barcol.' },
  { word: 'wet_film', at: ['value of expect'], takes: [argument('length'), argument('length', { after: 'to' })], example: 'check wet_film 400 um to 600 um', meaning: 'Thickness of the wet coat, read with the comb in several places.' },
];
