import { ownOfVerb } from '../own.ts';

/** What a rate counts. Areas and lengths are those that the step works on. */
export type PerUnit = 'step' | 'm2' | 'm' | 'piece' | 'coat' | 'coat m2' | 'hole' | 'pleat';

export interface Rate {
  readonly per: PerUnit;
  /** minutes of one pair of hands */
  readonly minutes: number;
}

export interface Duration {
  readonly working: readonly Rate[];
  /** minutes nobody is needed, where nothing is typed; per coat for what is put on in coats */
  readonly standing?: Rate;
  /** what a time on the line is: of hands, or of waiting */
  readonly typed: 'working' | 'standing';
  readonly why: string;
}

const each = (per: PerUnit, minutes: number): Rate => ({ per, minutes });
const hands = (why: string, ...working: readonly Rate[]): Duration => ({ working, typed: 'working', why });
const waits = (why: string, standing: Rate | undefined, ...working: readonly Rate[]): Duration => ({
  working,
  standing,
  typed: 'standing',
  why,
});

/** Where a value of this table comes from: nobody publishes such times, and every shop has its own. */
export const DURATION_SOURCE = 'common practice, from memory; type your own time on the line';

/** Laying a piece where resin is worked into it as it goes down. */
export const WET_LAY = hands('fetch, place and wet out each piece', each('piece', 3), each('m2', 10));
/** Brushing or spraying a coat. */
export const COAT_LAY = hands('mix, apply, check the film', each('coat', 6), each('coat m2', 6));

/** Working and waiting time of steps that say no time, by verb. Two words of a verb are looked up together, then the first. */
export const DURATIONS: Readonly<Record<string, Duration>> = {
  clean: hands('wipe twice, with fresh rags', each('step', 5), each('m2', 5)),
  release: waits(
    'wipe on, wipe off; each coat dries before the next',
    each('coat', 20),
    each('coat', 2),
    each('coat m2', 4),
  ),
  mask: hands('stick and press down', each('m', 1.5)),
  unmask: hands('pull off', each('m', 0.5)),
  tape: hands('stick on the clean flange, liner on', each('m', 1.5)),
  tack: hands('a light mist', each('step', 2), each('m2', 1)),
  lay: hands('fetch, place and smooth each piece', each('piece', 3), each('m2', 5)),
  cut: hands('mark and cut', each('piece', 4)),
  roll: hands('roll out the air', each('m2', 3)),
  debulk: waits('under vacuum', each('step', 20), each('step', 5)),
  bed: hands('spread with a notched trowel, press in', each('m2', 10)),
  fill: hands('press into joints, scrape off', each('step', 10)),
  score: hands('along a rule', each('m2', 8)),
  shape: hands('cut and sand to shape', each('m2', 25)),
  chamfer: hands('plane or router', each('m', 3)),
  peel: hands('lay without wrinkles', each('step', 2), each('m2', 3)),
  perforated: hands('lay without wrinkles', each('step', 2), each('m2', 3)),
  film: hands('lay without wrinkles', each('step', 2), each('m2', 3)),
  mesh: hands('cut to line and lay', each('step', 2), each('m2', 3)),
  bleeder: hands('lay', each('step', 2), each('m2', 2)),
  breather: hands('lay', each('step', 2), each('m2', 2)),
  caul: hands('wrap, place, tape down', each('step', 8)),
  intensifier: hands('place', each('step', 4)),
  dam: hands('place round the edge', each('m', 2)),
  thermocouple: hands('tape down, lead out through the seal', each('step', 5)),
  feed: hands('place, tape the ends, lead out', each('step', 5), each('m', 1)),
  vent: hands('place, tape the ends, lead out', each('step', 5), each('m', 1)),
  trap: hands('connect and check', each('step', 5)),
  bag: hands('cut, fold the pleats, press down on the tape', each('step', 5), each('m', 2), each('pleat', 1)),
  vacuum: waits('pull slowly, smooth the film', undefined, each('step', 5)),
  'leak test': waits('pull down, listen for leaks, then read', each('step', 20), each('step', 10)),
  tint: hands('stir in', each('step', 3)),
  infuse: waits('mix, open, watch the front, clamp', undefined, each('step', 20)),
  wait: waits('nobody is needed', undefined),
  hold: waits('the oven does it', undefined),
  ramp: waits('the oven does it', undefined),
  keep: waits('nobody is needed', undefined),
  cure: waits('nobody is needed', undefined),
  postcure: waits('set up the oven and the support', undefined, each('step', 10)),
  heat: waits('set up', undefined, each('step', 5)),
  dry: waits('into the oven and out', undefined, each('step', 5)),
  thaw: waits('out of the freezer, bag shut', each('step', 360), each('step', 2)),
  demould: hands('wedges all round', each('step', 15)),
  unwrap: hands('pull off', each('step', 5)),
  pull: hands('pull off', each('step', 3), each('m2', 2)),
  trim: hands('saw or router, dust off', each('step', 5), each('m', 4)),
  sand: hands('sand and dust off', each('step', 3), each('m2', 10)),
  wipe: hands('one way, fresh cloth', each('m2', 2)),
  seal: hands('brush along the edge', each('step', 5), each('m', 2)),
  'seal core': hands('brush both faces, turn it over', each('step', 5), each('m2', 8)),
  'seal hole': hands('a wipe in each hole', each('step', 3), each('hole', 0.5)),
  drill: hands('mark, drill, deburr', each('step', 5), each('hole', 2)),
  fair: hands('spread, sand', each('m2', 25)),
  prime: waits('spray', each('step', 240), each('step', 15), each('m2', 5)),
  paint: waits('spray', each('step', 240), each('step', 15), each('m2', 8)),
  check: hands('look and write down', each('step', 2)),
  weigh: hands('weigh and write down', each('step', 3)),
  do: hands('a step in words that says no time', each('step', 5)),
  bond: hands('butter, close, clamp', each('step', 10), each('m', 3)),
  clamp: hands('place, or pinch off', each('step', 2)),
  fillet: hands('mix, draw and scrape', each('step', 5), each('m', 3)),
  wash: hands('water and a pad, dry', each('m2', 4)),
  pour: hands('mix and pour', each('step', 10)),
  polish: hands('cut and polish', each('m2', 20)),
  perforate: hands('with a spiked roller or a drill', each('m2', 6)),
  'bag down': waits('bag, pull, until the paste has gelled', each('step', 60), each('step', 20)),
  wet: hands('on film, with a squeegee', each('m2', 6)),
  cool: waits('the oven does it', undefined),
  mix: hands('weigh and stir, scrape the pot', each('step', 5)),
  accelerate: hands('stir in fully', each('step', 3)),
  catalyse: hands('stir in', each('step', 3)),
  degas: waits('in a pot under vacuum', each('step', 10), each('step', 3)),
  open: hands('and watch', each('step', 1)),
  kit: hands('what is in it', each('step', 0)),
};

/** A verb that no row knows. */
export const UNKNOWN_STEP = hands('a step that no row of the table knows', each('step', 5));

/** Waiting until something has happened, minutes, where no material tells. */
export const WAIT_UNTIL: Readonly<Record<string, { readonly minutes: number; readonly why: string }>> = {
  tacky: { minutes: 60, why: 'common practice: 45 to 90 min at 20 degC; a gloved finger comes away clean' },
  gel: { minutes: 60, why: 'common practice; the gel time of the resin takes its place' },
  cool: { minutes: 60, why: 'common practice: an hour until the exotherm is over' },
  hard: { minutes: 720, why: 'common practice: overnight' },
};

export function durationOf(verb: string): Duration {
  return ownOfVerb(DURATIONS, verb) ?? UNKNOWN_STEP;
}
