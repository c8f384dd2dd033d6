import { sheetPast } from '../../../calc/bag/bag.figure.ts';
import { SHEET_PAST } from '../../../calc/bag/habits.ts';
import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import type { Accepted, Book, Step } from '../../../calc/model/index.ts';
import { coatsOf } from '../../../calc/plan/coats.figure.ts';
import { layPlan } from '../../../calc/plan/lay.figure.ts';
import { head, typedTime } from '../../../calc/plan/reading.ts';
import { stepStandingTime } from '../../../calc/plan/step.figure.ts';
import { PRESSURE, type Quantity, TIME } from '../../../calc/quantity/index.ts';
import type { Report, StepRow } from '../../../calc/report.ts';
import { leakLimit } from '../../../calc/vacuum/vacuum.figure.ts';
import { DEFERRAL } from '../../words/cautions.ts';
import { verb } from '../../words/index.ts';
import { type Blank, stepBlanks, stepTables, usUnits, wetBlanks } from '../../words/sheet-blanks.ts';
import { cautionsOfStep } from '../cautions.ts';
import { figureOf } from '../figures.ts';
import { testWords } from '../report/expects.ts';
import type { Table } from '../report/section.ts';
import { stepAmounts } from '../step-words.ts';
import { type Style, safe, say, show } from '../text.ts';
import { translated } from '../translation.ts';
import { clauseWords, instructionOf, pastWords, type Said } from './instruction.ts';
import { layTable } from './pieces.ts';
import { potsOfStep } from './pots.ts';
import type { SheetPot, SheetStep } from './sheet.ts';

/** The lines of the process in order, each with all that it needs: nobody turns a page with resin on the gloves. */
export function sheetSteps(report: Report, bench: Bench, book: Book, style: Style): SheetStep[] {
  const plan = bench.ask(layPlan);
  const numbers = new Numbers();
  const kits = report.steps.flatMap(({ step }) => (step.verb === 'kit' ? [step] : []));
  return report.steps.map((row) => {
    const { step } = row;
    const laid = isKnown(plan) ? (plan.value.layersOf.get(step.path) ?? []) : [];
    const pieces = layTable(laid, style);
    const pots = potsOfStep(bench, step, style);
    const found = cautionsOfStep(bench.recipe, step, book);
    const readings = readingsOf(step, style);
    return {
      number: numbers.next(row.depth),
      path: step.path,
      what: instructionOf(step, style, usualOf(step, bench, style)),
      says: clauseWords(step, style),
      // what is joined on the bench leaves the tool free
      takes: takesWords(row, kits.find(({ steps }) => steps?.includes(step)) ?? step, style),
      why: withoutMarks(translated(verb(step.verb)?.meaning ?? '')),
      ...(pieces === undefined ? {} : { pieces }),
      pots,
      cautions: found.length === 0 ? [] : [...found.map(({ brief }) => translated(brief)), translated(DEFERRAL)],
      notes: (step.notes ?? []).map(safe),
      accepted: acceptedWords([...(step.accepts ?? []), ...laid.flatMap(({ layer }) => layer.accepts ?? [])]),
      blanks: blanksOf(step, pots, style),
      ...(readings === undefined ? {} : { readings }),
    };
  });
}

/** Waits that the step may leave to the material or to the trade. */
const WAITS = ['thaw', 'dry', 'debulk', 'degas'];

/** What is usual where a step says nothing: how far a sheet goes, what a leak test may lose, how long is about waited. */
function usualOf(step: Step, bench: Bench, style: Style): Said {
  if (Object.hasOwn(SHEET_PAST, step.verb)) {
    const past = bench.recipe.part === undefined ? undefined : sheetPast(bench, step);
    return past !== undefined && isKnown(past) ? { edge: pastWords(past.value, style) } : {};
  }
  if (step.verb === 'release') {
    const coats = coatsOf(bench, step).first;
    return { coats: coats === 1 ? say('1 coat') : say('{count} coats', { count: coats }, style) };
  }
  if (step.verb === 'leak test' && head(step).length === 0) {
    const limit = bench.ask(leakLimit);
    if (!isKnown(limit)) return {};
    const { rise, time } = limit.value;
    return { amount: show(quantity(rise, PRESSURE), style), time: show(quantity(time, TIME), style) };
  }
  const state = step.verb === 'wait';
  if ((!state && !WAITS.includes(step.verb)) || typedTime(step) !== undefined) return {};
  const waits = bench.ask(stepStandingTime, step.path);
  return isKnown(waits) ? { [state ? 'planned' : 'time']: show(quantity(waits.value, TIME), style) } : {};
}

/** `3`, and `3.1` for the first line of its block. */
class Numbers {
  private readonly counts: number[] = [];

  next(depth: number): string {
    this.counts.length = depth + 1;
    this.counts[depth] = (this.counts[depth] ?? 0) + 1;
    return this.counts.join('.');
  }
}

function takesWords(row: StepRow, where: Step, style: Style): string {
  const time = (name: string): Quantity | undefined => {
    const figure = figureOf(row.figures, name)?.figure;
    return figure !== undefined && isKnown(figure) && figure.value > 0 ? quantity(figure.value, TIME) : undefined;
  };
  const [hands, waiting] = [time('step_working_time'), time('step_standing_time')];
  const occupies = (verb(where.verb)?.occupies ?? []).filter((what) => what !== 'people');
  return [
    ...(hands === undefined ? [] : [say('{time} of hands', { time: hands }, style)]),
    ...(waiting === undefined ? [] : [say('{time} of waiting', { time: waiting }, style)]),
    ...(occupies.length === 0 ? [] : [say('occupies {what}', { what: occupies.map(translated).join(', ') })]),
    ...stepAmounts(row, style),
  ].join('; ');
}

function blanksOf(step: Step, pots: readonly SheetPot[], style: Style): readonly Blank[] {
  if (step.verb === 'check') {
    return step.test === undefined ? [{ label: say('seen'), box: true }] : [{ label: testWords(step.test, style) }];
  }
  const blanks = [...(stepBlanks[step.verb] ?? []), ...(pots.length > 0 && step.verb === 'lay' ? wetBlanks : [])];
  // several pots have their times in their own table
  const timed = pots.length > 0 && pots.every(({ log }) => log !== undefined);
  return blanks.filter(({ label }) => !(timed && label === 'mixed at')).map((blank) => blankOf(blank, style));
}

function readingsOf(step: Step, style: Style): Table | undefined {
  const table = stepTables[step.verb];
  if (table === undefined) return undefined;
  const named = (blank: Blank): string => {
    const { label, unit } = blankOf(blank, style);
    return unit === undefined ? label : `${label}, ${unit}`;
  };
  const rows = table.rows.map((row) => table.head.map((_, i) => (i === 0 ? named(row) : '')));
  return { head: table.head.map(named), right: [], rows };
}

/** Findings that are accepted somewhere, each once. */
export const acceptedWords = (accepts: readonly Accepted[]): string[] => [
  ...new Set(accepts.map(({ rule, reason }) => `${rule}: ${safe(reason)}`)),
];

/** A blank in the language and the units of the reader. */
export function blankOf(blank: Blank, { units }: Style): Blank {
  const unit = blank.unit === undefined || units !== 'us' ? blank.unit : (usUnits[blank.unit] ?? blank.unit);
  return { ...blank, label: translated(blank.label), ...(unit === undefined ? {} : { unit }) };
}

/** Words of the notation stand between backticks in the tables; on paper they need none. */
const withoutMarks = (words: string): string => words.replaceAll('`', '');
