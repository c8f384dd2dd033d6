/** The steps of each process, as lines of the notation; the layers are named in the stack that goes with them. */
import type { ProcessKind } from './choices.ts';
import type { Words } from './words.ts';

/** What the steps refer to: lengths in whole millimetres, layers by name. */
export interface Laid {
  readonly tool: string;
  readonly fabric: string;
  /** half the length of the feed line, mm */
  readonly feed: number;
  /** the layers of the two skins in the order of the stack; there is a core between them or none */
  readonly first: readonly [string, string];
  readonly second: readonly [string, string];
  readonly cored: boolean;
  readonly carbon: boolean;
}

const dust = (carbon: boolean, { carbonDust, glassDust }: Words): string => (carbon ? carbonDust : glassDust);

const hand = ({ tool, first, second, cored, carbon }: Laid, words: Words): readonly string[] => [
  'process hand with polyester_laminating at 20 degC {',
  `  clean ${tool}`,
  '  release wax, 4 coats, 30 min each',
  '  lay gel, catalyst 2 % by weight',
  `    , note "${words.peroxide}"`,
  '  check wet_film 400 um to 600 um',
  '  wait until tacky',
  `  lay ${first[0]} to ${cored ? first[1] : second[1]}, catalyst 1.5 % by weight, fibre 36 % by weight`,
  `    , note "${words.accelerator}"`,
  `  do "${words.rollOut}", 10 min`,
  ...(cored
    ? [
        '  wait until cool',
        // the core's cells take little: a stronger dose of it can still be weighed
        '  lay body, catalyst 2.2 % by weight, 15 min',
        `  do "${words.weighDown}", 10 min`,
        '  wait until cool',
        `  lay ${second[0]} to ${second[1]}, catalyst 1.5 % by weight, fibre 36 % by weight`,
        `  do "${words.rollOut}", 10 min`,
      ]
    : []),
  '  peel nylon_85, 40 mm past edge',
  '  wait until gel',
  '  trim green, knife, 10 min after gel',
  '  cure 24 h at 20 degC',
  '  check barcol >= 35',
  '  demould',
  `  trim net, note "${dust(carbon, words)}"`,
  '  seal edge polyester_laminating',
  '  weigh',
  '}',
];

const bagged = ({ tool, first, second, carbon }: Laid, words: Words): readonly string[] => [
  'process bagged with epoxy_laminating_medium at 21 degC {',
  `  clean ${tool}`,
  '  release semi_permanent, 4 coats, 20 min each',
  '  tape sealant_12',
  `  lay ${first[0]} to ${second[1]}, resin 48 % by weight`,
  `    , note "${words.epoxy}"`,
  '  peel nylon_85, 40 mm past edge',
  '  perforated film_p3, 40 mm past edge',
  '  breather poly_150, 80 mm past edge',
  '  trap',
  '  bag film_50, pleats 14 of 40 mm',
  '  leak test 10 mbar in 10 min',
  '  vacuum 650 mbar gauge, within 75 min of mix',
  '  cure 24 h at 21 degC',
  '  demould',
  `  trim net, note "${dust(carbon, words)}"`,
  '  weigh',
  '}',
];

const infusion = ({ tool, feed, carbon }: Laid, words: Words): readonly string[] => [
  'process infusion with epoxy_infusion_slow at 23 degC {',
  `  clean ${tool}`,
  '  release semi_permanent, 4 coats, 20 min each',
  '  tape sealant_12',
  '  lay stack',
  '  peel nylon_85, 60 mm past edge',
  '  mesh mesh_130, 35 mm short of edge',
  `  feed f1 spiral_10 from (${-feed} mm, 0 mm) to (${feed} mm, 0 mm)`,
  '  vent v1 spiral_10 perimeter, 50 mm outside, through tape by tube_10',
  '  trap',
  '  bag film_50, pleats 12 of 40 mm',
  '  leak test 5 mbar in 10 min',
  `  check "${words.noBridging}"`,
  '  infuse {',
  '    open f1',
  '    clamp f1 when full',
  '    vacuum 50 mbar absolute until gel',
  '  }',
  `  cure 36 h at 23 degC, note "${words.epoxy}"`,
  '  demould',
  `  trim net, note "${dust(carbon, words)}"`,
  '  weigh',
  '}',
];

const prepreg = ({ tool, fabric, first, second, carbon }: Laid, words: Words): readonly string[] => [
  'process prepreg {',
  `  thaw ${fabric}, 6 h, bag shut`,
  `  clean ${tool}`,
  '  release semi_permanent, 4 coats, 20 min each, bake 30 min at 120 degC',
  '  tape sealant_12_hot',
  '  dam cork_5, at edge',
  `  lay ${first[0]}, 15 min, note "${words.prepreg}"`,
  '  debulk 20 min',
  `  lay ${first[1]} to ${second[1]}, debulk 20 min every 3 plies`,
  '  thermocouple 2, in flange',
  '  peel nylon_85_untreated',
  '  perforated film_p3, 5 mm short of dam',
  '  bleeder glass_100, 1 layer',
  '  film solid_25',
  '  breather glass_300',
  '  trap',
  '  bag film_75_hot, pleats 14 of 50 mm',
  '  leak test 10 mbar in 10 min',
  '  vacuum 950 mbar gauge',
  '  cure {',
  '    ramp 1.5 K/min to 80 degC',
  '    hold 30 min, part within 5 K',
  '    ramp 1.5 K/min to 120 degC',
  '    hold 60 min, part above 117 degC',
  '    cool 2 K/min to 50 degC, vacuum on',
  '  }',
  '  demould below 50 degC',
  '  weigh',
  `  trim net, note "${dust(carbon, words)}"`,
  '}',
];

export const stepsOf: Readonly<Record<ProcessKind, (laid: Laid, words: Words) => readonly string[]>> = {
  hand,
  bagged,
  infusion,
  prepreg,
};
