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
  'leak test': [
    { label: 'pump shut off at' },
    { label: 'gauge then', unit: 'mbar' },
    { label: 'half way', unit: 'mbar' },
    { label: 'at the end', unit: 'mbar' },
    { label: 'leak found and closed at' },
  ],
  degas: STARTED,
  infuse: [
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
export const wetBlanks: readonly Blank[] = [...STARTED, { label: 'gel seen at' }];

/** Written down before anything is begun. */
export const firstBlanks: readonly Blank[] = [
  { label: 'date' },
  { label: 'built by' },
  { label: 'shop temperature', unit: 'degC' },
  { label: 'humidity', unit: '% RH' },
  { label: 'tool temperature', unit: 'degC' },
];
