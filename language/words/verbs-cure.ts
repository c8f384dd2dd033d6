import { argument, FROM_MEMORY } from './arguments.ts';
import { steps } from './step-row.ts';

/** Heat and time. */
export const cureVerbs = steps('cure', [
  {
    word: 'cure',
    takes: [argument('time', { optional: true }), argument('temperature', { after: 'at', optional: true })],
    example: 'cure 24 h at 20 degC',
    sheet: 'Cure {time} at {temperature}.',
    meaning:
      'Leaves the part to cure, at the temperature given or of the process. With braces: a schedule of ramps and holds. No tape, film, mesh, core or tool may get hotter than its limit.',
    occupies: ['tool'],
    clauses: ['vacuum', 'part', 'at', 'until', 'on'],
    block: true,
  },
  {
    word: 'postcure',
    takes: [
      argument('word', { words: ['free', 'flat', 'hung', 'on'], optional: true }),
      argument('time', { optional: true }),
      argument('temperature', { after: 'at', optional: true }),
    ],
    example: 'postcure flat { ramp 10 K/h to 50 degC }',
    sheet: 'Postcure {how}, {time}, at {temperature}.',
    meaning:
      'Heat after the first cure, for strength and heat resistance. Slowly, and supported: free above what it has reached, the part sags.',
    needs: ['an oven'],
    occupies: ['oven'],
    block: true,
    source: "epoxy maker's page: 60 to 82 degC, most of the gain by 8 h",
    clauses: ['vacuum', 'part', 'at', 'on'],
  },
  {
    word: 'ramp',
    at: ['cure', 'postcure'],
    takes: [argument('ramp'), argument('temperature', { after: 'to' })],
    example: 'ramp 10 K/h to 50 degC',
    sheet: 'Ramp {amount} to {temperature}.',
    meaning:
      'Heats at this rate. Over 10 to 15 K/h an epoxy that is still soft distorts; over 3 K/min thick parts overheat.',
    source: FROM_MEMORY,
    occupies: ['oven'],
    clauses: ['part', 'vacuum'],
  },
  {
    word: 'hold',
    at: ['cure', 'postcure', 'process', 'infuse'],
    takes: [argument('time'), argument('temperature', { after: 'at', optional: true })],
    example: 'hold 8 h at 50 degC',
    sheet: 'Hold {time}, at {temperature}.',
    meaning: 'Stays at this temperature (or this vacuum). The time counts from when the part is there, not the air.',
    occupies: ['oven'],
    clauses: ['part', 'vacuum', 'at', 'until'],
  },
  {
    word: 'cool',
    at: ['cure', 'postcure'],
    takes: [argument('ramp'), argument('temperature', { after: 'to' })],
    example: 'cool 2 K/min to 50 degC',
    sheet: 'Cool {amount} to {temperature}.',
    meaning: 'Cools at this rate. Fast cooling prints and cracks, and a metal tool lets go with a jerk.',
    occupies: ['oven'],
    clauses: ['vacuum', 'part'],
  },
]);

/** Waiting and looking. */
export const waitVerbs = steps('wait and check', [
  {
    word: 'wait',
    at: ['process', 'infuse'],
    takes: [
      argument('time', { optional: true }),
      argument('word', { after: 'until', words: ['tacky', 'gel', 'cool', 'hard'], optional: true }),
    ],
    example: 'wait until tacky',
    sheet: 'Wait {wait}, about {planned}: {look}.',
    meaning:
      'Waits a time, or for a state; the bench goes by the state, the plan takes the time from the window of the material.',
    occupies: ['tool'],
    clauses: ['at', 'until'],
  },
  {
    word: 'check',
    at: ['process', 'kit', 'infuse'],
    takes: [argument('test')],
    example: 'check barcol >= 35',
    sheet: 'Check: {text}',
    meaning: 'A box on the sheet: words to be ticked, or a value to be measured. The record answers it.',
    clauses: ['on', 'at', 'in', 'after'],
  },
  {
    word: 'weigh',
    at: ['process', 'kit'],
    takes: [argument('name', { names: ['layer'], optional: true })],
    example: 'weigh',
    sheet: 'Weigh; write it in the record.',
    meaning: 'Weighs the part (or the layer): the simplest check of the fibre fraction.',
    occupies: ['people'],
    clauses: ['on', 'at'],
  },
  {
    word: 'do',
    at: ['process', 'kit', 'infuse'],
    takes: [argument('text'), argument('time', { optional: true })],
    example: 'do "Roll out from the middle.", 10 min',
    sheet: '{text}',
    meaning: 'A step in your own words: on the sheet and in the plan like any other.',
  },
]);
