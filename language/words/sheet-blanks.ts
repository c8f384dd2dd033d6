/**
 * What must be written down at the bench because nobody can see it after cure, step by step. The sheet has a blank for
 * each, the record a line for those that name one.
 */
export interface Blank {
  /** what is written, as it stands before the blank */
  readonly label: string;
  /** stands behind the blank */
  readonly unit?: string;
  /** a box to tick instead of a line to write on */
  readonly box?: true;
}

const STARTED: readonly Blank[] = [{ label: 'started' }, { label: 'ended' }];

/** By verb; a verb that is not listed has nothing but its own box. */
export const stepBlanks: Readonly<Record<string, readonly Blank[]>> = {
  thaw: [{ label: 'out of the freezer' }, { label: 'dry outside, bag opened' }],
  dry: STARTED,
  release: [{ label: 'coats done' }, { label: 'last coat at' }],
  catalyse: [{ label: 'catalyst as measured', unit: 'g' }, { label: 'stirred in at' }],
  mix: [
    { label: 'resin as weighed', unit: 'g' },
    { label: 'hardener as weighed', unit: 'g' },
    { label: 'mixed at' },
    { label: 'resin temperature', unit: 'degC' },
  ],
  tack: [{ label: 'can before and after', unit: 'g' }],
  'bag down': [{ label: 'bag closed at' }, { label: 'vacuum', unit: 'mbar' }],
  debulk: STARTED,
  vacuum: [{ label: 'vacuum reached', unit: 'mbar' }, { label: 'at' }],
  degas: STARTED,
  infuse: [
    { label: 'mixed at' },
    { label: 'feed opened at' },
    { label: 'full at' },
    { label: 'resin temperature', unit: 'degC' },
    { label: 'left in the pot', unit: 'g' },
    { label: 'gel seen at' },
  ],
  open: [{ label: 'at' }],
  clamp: [{ label: 'at' }],
  cure: [...STARTED, { label: 'hottest', unit: 'degC' }],
  postcure: [...STARTED, { label: 'hottest', unit: 'degC' }],
  hold: STARTED,
  wait: [{ label: 'over at' }],
  demould: [{ label: 'at' }, { label: 'part then', unit: 'degC' }],
  weigh: [{ label: 'mass', unit: 'kg' }],
};

/** A step that wets cloth or lays a coat. */
export const wetBlanks: readonly Blank[] = [{ label: 'mixed at' }, ...STARTED, { label: 'gel seen at' }];

/** What is read more than once: a table to write in, a line for each reading. */
export interface BlankTable {
  readonly head: readonly Blank[];
  readonly rows: readonly Blank[];
}

const LEAK_READINGS: readonly Blank[] = [
  { label: 'pump shut off' },
  { label: 'half way' },
  { label: 'at the end' },
  { label: 'once more: pump shut off' },
  { label: 'half way' },
  { label: 'at the end' },
];

/** A leak is read three times, and once more when it was found and closed. */
export const stepTables: Readonly<Record<string, BlankTable>> = {
  'leak test': {
    head: [
      { label: 'reading' },
      { label: 'time' },
      { label: 'gauge', unit: 'mbar' },
      { label: 'leak found and closed' },
    ],
    rows: LEAK_READINGS,
  },
};

/** Units of the table above as a shop reads them that works in feet and pounds; a balance shows grams there too. */
export const usUnits: Readonly<Record<string, string>> = { degC: 'degF', kg: 'lb', mbar: 'inHg' };

/** Written down before anything is begun. */
export const firstBlanks: readonly Blank[] = [
  { label: 'date' },
  { label: 'built by' },
  { label: 'shop temperature', unit: 'degC' },
  { label: 'humidity', unit: '% RH' },
  { label: 'tool temperature', unit: 'degC' },
];
