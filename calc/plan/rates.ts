import { pleats, tapeLength } from '../bag/bag.figure.ts';
import { type Bench, type Figure, isKnown, knownBy, type Reason, reason, text, whenKnown } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { AREA, LENGTH, NUMBER, sameDimension } from '../quantity/index.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { type StepAmount, stepAmount } from './amount.figure.ts';
import { coatsOf, mouldArea } from './coats.figure.ts';
import { COAT_LAY, DURATION_SOURCE, type Duration, durationOf, type PerUnit, type Rate, WET_LAY } from './durations.ts';
import { layPlan } from './lay.figure.ts';

/** What the rates of a duration are counted by. */
export interface Measures {
  readonly m2: number;
  readonly m: number;
  readonly pieces: number;
  readonly coats: number;
  readonly holes: number;
  readonly pleats: number;
}

const COUNTED: Readonly<Record<PerUnit, (of: Measures) => number>> = {
  step: () => 1,
  m2: (of) => of.m2,
  m: (of) => of.m,
  piece: (of) => of.pieces,
  coat: (of) => of.coats,
  'coat m2': (of) => of.coats * of.m2,
  hole: (of) => of.holes,
  pleat: (of) => of.pleats,
};

export function total(rates: readonly Rate[], of: Measures): number {
  let minutes = 0;
  for (const rate of rates) minutes += rate.minutes * COUNTED[rate.per](of);
  return 60 * minutes;
}

/** Whether a time does not hang on the size of what is worked on. */
export const ofStepAlone = ({ working }: Duration): boolean => working.every(({ per }) => per === 'step');

/** Sizes that a step works on. What cannot be told yet holds up the time, as it holds up the amount. */
export function measures(bench: Bench, step: Step): Figure<Measures> {
  const amount = bench.ask(stepAmount, step.path);
  if (step.verb === 'bag')
    return whenKnown({ amount, length: bench.ask(tapeLength) }, (v, reasons) => {
      const folded = bench.ask(pleats);
      const count = isKnown(folded) ? folded.value.count : 0;
      return knownBy({ ...measured(bench, step, v.amount), m: v.length, pleats: count }, reasons);
    });
  if (step.verb === 'release')
    return whenKnown({ amount, mould: bench.ask(mouldArea) }, (v, reasons) => {
      const sizes = measured(bench, step, v.amount);
      return knownBy({ ...sizes, coats: v.amount.coats?.first ?? 1, m2: v.mould > 0 ? v.mould : sizes.m2 }, reasons);
    });
  return isKnown(amount) ? knownBy(measured(bench, step, amount.value), amount.reasons) : amount;
}

/** What the things that a step takes come to. */
function measured(bench: Bench, step: Step, { items }: StepAmount): Measures {
  const layers = laidBy(bench, step);
  let area = 0;
  let largest = 0;
  let length = 0;
  let holes = 0;
  for (const { amount } of items) {
    if (sameDimension(amount.dimension, AREA)) {
      area += amount.si;
      largest = Math.max(largest, amount.si);
    } else if (sameDimension(amount.dimension, LENGTH)) length += amount.si;
    else if (sameDimension(amount.dimension, NUMBER)) holes += amount.si;
  }
  // a kit goes into the tool in one piece, as large as its largest layer
  const kit = step.lay?.what === 'kit';
  return {
    m2: kit ? largest : area,
    m: length,
    pieces: step.verb === 'cut' ? holes : kit || step.lay === undefined ? 1 : layers.length,
    coats: layers.reduce((most, l) => Math.max(most, l.layer.coats ?? 1), 1),
    holes,
    pleats: 0,
  };
}

/** What a step lays, from the tool face. */
export function laidBy(bench: Bench, step: Step): readonly LaidLayer[] {
  if (step.lay === undefined) return [];
  const plan = bench.ask(layPlan);
  return isKnown(plan) ? (plan.value.layersOf.get(step.path) ?? []) : [];
}

/** The row of the table that a step goes by. */
export function rowOf(bench: Bench, step: Step): Duration {
  if (step.lay === undefined) return durationOf(step.verb);
  const layers = laidBy(bench, step);
  if (layers.length > 0 && layers.every((l) => l.layer.kind === 'coat')) return COAT_LAY;
  const { process } = bench.recipe;
  const wet = step.lay.resin !== undefined || process?.kind === 'hand' || process?.kind === 'bagged';
  return wet && step.lay.what !== 'kit' ? WET_LAY : durationOf('lay');
}

/** Steps that put on coats. */
const COATED = ['release', 'prime', 'paint'];

/** How often a time that is said for each is taken: each coat, each piece. */
export function times(bench: Bench, step: Step): number {
  const layers = laidBy(bench, step);
  if (COATED.includes(step.verb)) return coatsOf(bench, step).first;
  return Math.max(
    1,
    layers.reduce((sum, l) => sum + (l.layer.coats ?? 1), 0),
  );
}

export const NOTHING: Measures = { m2: 0, m: 0, pieces: 1, coats: 1, holes: 0, pleats: 0 };

/** The reason of a time that the table gives. */
export const fromTable = (step: Step, row: Duration, reasons: readonly Reason[] = []): Reason =>
  reason('trade', text('{verb}: {why}', { verb: step.verb, why: row.why || 'usual time' }), {
    source: DURATION_SOURCE,
    reasons,
  });
