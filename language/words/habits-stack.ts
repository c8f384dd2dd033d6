import { COMMON_PRACTICE, FROM_MEMORY } from './arguments.ts';
import { type HabitRow, habitWords } from './habit-row.ts';

const rows: readonly HabitRow[] = [
  {
    word: 'core_pressed',
    takes: 'ratio',
    usual: '33 %',
    source: `${COMMON_PRACTICE}: a third`,
    meaning: 'The share of its strength that a core may be pressed with at the heat of the cure.',
  },
  {
    word: 'chamfer',
    takes: 'angle',
    usual: '30 deg',
    source: `20 deg as a rule of thumb, 45 deg has been used; ${COMMON_PRACTICE}`,
    meaning: 'The steepest edge of a core that a skin runs down without a kink.',
  },
  {
    word: 'square_edge',
    takes: 'length',
    usual: '3 mm',
    source: FROM_MEMORY,
    meaning: 'The thickest core that may end square inside the skins.',
  },
  {
    word: 'thin_core',
    takes: 'length',
    usual: '2 mm',
    source: FROM_MEMORY,
    meaning: 'The thickest core round which the resin of an infusion reaches the skin below, without holes.',
  },
  {
    word: 'mat_bed',
    takes: 'areal weight',
    usual: '450 g/m2',
    source: COMMON_PRACTICE,
    meaning: 'The wet mat that beds a core in a hand layup.',
  },
  {
    word: 'stepped_glass',
    takes: 'areal weight',
    usual: '400 g/m2',
    source: COMMON_PRACTICE,
    meaning: 'The least glass over a core that people step on.',
  },
  {
    word: 'stepped_carbon',
    takes: 'areal weight',
    usual: '200 g/m2',
    source: COMMON_PRACTICE,
    meaning: 'The least carbon over a core that people step on.',
  },
  {
    word: 'roving',
    takes: 'areal weight',
    usual: '500 g/m2',
    source: COMMON_PRACTICE,
    meaning: 'From this weight on a woven cloth counts as a roving, which wants mat on its face.',
  },
  {
    word: 'one_line',
    takes: 'areal weight',
    usual: '600 g/m2',
    source: FROM_MEMORY,
    meaning: 'The most cloth that may end at one line.',
  },
  {
    word: 'level',
    takes: 'length',
    usual: '0.5 mm',
    source: FROM_MEMORY,
    meaning: 'The step from an insert to its core that a skin lies over without a bridge.',
  },
  {
    word: 'oversize_times',
    takes: 'number',
    usual: '1.5',
    source: COMMON_PRACTICE,
    meaning: 'To how many of its diameters a bolt hole through bare core is drilled before it is filled, at the least.',
  },
  {
    word: 'deep_tool',
    takes: 'length',
    usual: '50 mm',
    source: COMMON_PRACTICE,
    meaning: 'From this depth on the sides of a tool want draft.',
  },
  {
    word: 'caul',
    takes: 'length',
    usual: '3 mm',
    source: `${COMMON_PRACTICE}: 3 to 20 mm`,
    meaning: 'How far a caul must end before the edge at least.',
  },
  {
    word: 'thick_prepreg',
    takes: 'length',
    usual: '6 mm',
    source: COMMON_PRACTICE,
    meaning: 'From this thickness on a prepreg heats itself and wants a dwell on the way.',
  },
  {
    word: 'thaw',
    takes: 'time',
    usual: '6 h',
    source: COMMON_PRACTICE,
    meaning: 'How long a prepreg thaws in its shut bag, where it does not say it itself.',
  },
  {
    word: 'warmth',
    takes: 'temperature difference',
    usual: '5 K',
    source: COMMON_PRACTICE,
    meaning: 'How far off its plan a build may be warm or cold before its times are told anew.',
  },
];

/** Habits about what lies in the stack, its tool and its heat. */
export const stackHabits = habitWords(rows);
