import type { DimensionName } from '../../calc/quantity/index.ts';
import { argument, COMMON_PRACTICE, FROM_MEMORY } from './arguments.ts';
import type { Word } from './types.ts';

interface HabitRow {
  readonly word: string;
  readonly takes: DimensionName | 'count';
  /** the common value, which also is the example */
  readonly usual: string;
  readonly source: string;
  readonly meaning: string;
}

const rows: readonly HabitRow[] = [
  {
    word: 'brake',
    takes: 'length',
    usual: '25 mm',
    source: "builders' page: 25 to 50 mm short of the trim line",
    meaning: 'How far the flow mesh must end short of the edge at least. What is left is the brake of peel ply only.',
  },
  {
    word: 'vent_gap',
    takes: 'length',
    usual: '75 mm',
    source: "pump maker's note: 75 mm on small parts, about 300 mm on large ones",
    meaning: 'The least way between a feed and a vent. Nearer, the vent drinks the resin.',
  },
  {
    word: 'lift',
    takes: 'length',
    usual: '500 mm',
    source: COMMON_PRACTICE,
    meaning: 'How far above its pot a part may lie. Half a metre of resin weighs 54 mbar.',
  },
  {
    word: 'viscosity',
    takes: 'viscosity',
    usual: '600 mPa.s',
    source: `infusion resins 80 to 400 mPa.s, ${FROM_MEMORY}`,
    meaning: 'The thickest resin that is still infused.',
  },
  {
    word: 'degas',
    takes: 'viscosity',
    usual: '400 mPa.s',
    source: COMMON_PRACTICE,
    meaning: 'From this on a resin keeps the air that was stirred in, and is degassed.',
  },
  {
    word: 'largest_pot',
    takes: 'mass',
    usual: '5 kg',
    source: `${COMMON_PRACTICE}: 3 to 5 kg`,
    meaning: 'The most resin in one pot, however slow it is.',
  },
  {
    word: 'ratio',
    takes: 'ratio',
    usual: '5 %',
    source: `3 to 5 % is typical, ${FROM_MEMORY}`,
    meaning: 'How far a mix may be off its ratio, where the resin gives no tolerance.',
  },
  {
    word: 'session',
    takes: 'areal weight',
    usual: '1800 g/m2',
    source: COMMON_PRACTICE,
    meaning: 'The most glass that is laid wet on wet in polyester. More heats itself, warps and turns white.',
  },
  {
    word: 'coldest',
    takes: 'temperature',
    usual: '15 degC',
    source: 'trade magazine 2021: 60 degF (15.6 degC)',
    meaning: 'The coldest at which resin is worked.',
  },
  {
    word: 'mould_cold',
    takes: 'temperature difference',
    usual: '3 K',
    source: COMMON_PRACTICE,
    meaning: 'How much colder than the air a mould may be.',
  },
  {
    word: 'dew',
    takes: 'temperature difference',
    usual: '3 K',
    source: "adhesive supplier's page",
    meaning: 'How far above the dew point a face must be before anything is put on it.',
  },
  {
    word: 'humid',
    takes: 'ratio',
    usual: '75 %',
    source: `${COMMON_PRACTICE}: 75 to 80 % RH`,
    meaning: 'The most humid air in which open epoxy is laid on without washing.',
  },
  {
    word: 'print',
    takes: 'areal weight',
    usual: '300 g/m2',
    source: COMMON_PRACTICE,
    meaning: 'From this weight on cloth prints through a gelcoat that it lies behind.',
  },
  {
    word: 'release_coats',
    takes: 'count',
    usual: '3',
    source: "supplier's repair page: 3 to 4 wax coats",
    meaning: 'The fewest coats of release on a tool.',
  },
  {
    word: 'tack_most',
    takes: 'areal weight',
    usual: '25 g/m2',
    source: `10 to 25 g/m2, ${FROM_MEMORY}`,
    meaning: 'The most spray adhesive. More stays soft and parts the layers.',
  },
  {
    word: 'open_film',
    takes: 'ratio',
    usual: '1 %',
    source: COMMON_PRACTICE,
    meaning: 'The open share that a perforated film under flow mesh must have.',
  },
  {
    word: 'corner',
    takes: 'length',
    usual: '10 mm',
    source: COMMON_PRACTICE,
    meaning: 'From this height of the stack on each corner of the part wants a pleat on either side.',
  },
  {
    word: 'cradle',
    takes: 'length',
    usual: '4 mm',
    source: COMMON_PRACTICE,
    meaning: 'The thinnest plate that stays flat in an envelope bag.',
  },
  {
    word: 'leak_most',
    takes: 'pressure',
    usual: '2 mbar',
    source: 'published limits run from 2 to 14 mbar a minute',
    meaning: 'The most that a leak test may allow in one minute.',
  },
  {
    word: 'test',
    takes: 'time',
    usual: '5 min',
    source: COMMON_PRACTICE,
    meaning: 'The shortest leak test: before that the film still settles.',
  },
  {
    word: 'gauge',
    takes: 'pressure',
    usual: '1 mbar',
    source: 'what hangs on the wall of the shop',
    meaning: 'The division of the vacuum gauge. A leak smaller than that it cannot show.',
  },
  {
    word: 'debulk',
    takes: 'count',
    usual: '5',
    source: 'trade article: the first ply and every 3 plies; 3 to 5 elsewhere',
    meaning: 'The most plies of prepreg between two debulks.',
  },
  {
    word: 'demould',
    takes: 'temperature',
    usual: '60 degC',
    source: COMMON_PRACTICE,
    meaning: 'The hottest at which a part leaves the tool.',
  },
  { word: 'ramp', takes: 'ramp', usual: '3 K/min', source: COMMON_PRACTICE, meaning: 'The fastest ramp of a cure.' },
  {
    word: 'postcure',
    takes: 'ramp',
    usual: '15 K/h',
    source: `10 to 15 K/h, ${FROM_MEMORY}`,
    meaning: 'The fastest ramp that the glass transition of a resin keeps ahead of.',
  },
  {
    word: 'groove',
    takes: 'length',
    usual: '0.5 mm',
    source: COMMON_PRACTICE,
    meaning: 'How much deeper than its strip a groove may be: so much the resin levels out.',
  },
  {
    word: 'sun',
    takes: 'temperature',
    usual: '65 degC',
    source: COMMON_PRACTICE,
    meaning: 'How hot a dark face gets in the sun. The glass transition of the resin under it must not lie below that.',
  },
  {
    word: 'drift',
    takes: 'ratio',
    usual: '10 %',
    source: COMMON_PRACTICE,
    meaning: 'How far the mass of a part may be off its plan.',
  },
];

/** Habits about the work itself: thresholds of the rules of steps and records. */
export const workHabits: readonly Word[] = rows.map(({ word, takes, usual, source, meaning }) => ({
  word,
  at: ['value of habit'],
  takes: [argument(takes)],
  example: `habit ${word} ${usual}`,
  default: usual,
  source,
  meaning,
}));
