import { stepAt } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  knownBy,
  text,
  typed,
  whenKnown,
} from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { amountOf, head, typedTime } from '../plan/reading.ts';
import { stepStandingTime } from '../plan/step.figure.ts';
import { dimension, TEMPERATURE } from '../quantity/index.ts';
import { workTemperature } from '../resin/time.figure.ts';
import type { HeatSpan } from './equivalent.ts';

const RAMP = dimension({ temperature: 1, time: -1 });

/** A span of a cure with the line that asks for it. */
export interface SaidSpan extends HeatSpan {
  readonly path: string;
}

const HEATED = ['cure', 'postcure'];

/** How warm the part is while a step stands, span by span: a schedule line by line, any other step at the temperature of the process. */
export const heatSpans = defineFigure<readonly SaidSpan[]>('heat_spans', (bench, path) =>
  whenKnown({ step: stepAt(bench, path), start: bench.ask(workTemperature) }, ({ step, start }) => {
    if (!HEATED.includes(step.verb)) return standing(bench, step, start);
    let temperature = start;
    const spans: Figure<SaidSpan>[] = [];
    for (const line of step.steps === undefined || step.steps.length === 0 ? [step] : step.steps) {
      const from = temperature;
      const target =
        amountOf(head(line), TEMPERATURE) ??
        line.clauses
          .map((c) => (c.word === 'at' ? amountOf(c.arguments, TEMPERATURE) : undefined))
          .find((t) => t !== undefined);
      temperature = target?.si ?? temperature;
      const ramps = line.verb === 'ramp' || line.verb === 'cool';
      if (!ramps && line !== step && line.verb !== 'hold') continue;
      spans.push(ramps ? ramp(bench, line, from, temperature) : hold(bench, line, temperature));
    }
    return ifKnown(allKnown(spans), (spans, reasons) => knownBy(spans, reasons));
  }),
);

function standing(bench: Bench, step: Step, temperature: number): Figure<readonly SaidSpan[]> {
  return ifKnown(bench.ask(stepStandingTime, step.path), (time, reasons) =>
    knownBy(time > 0 ? [{ from: temperature, to: temperature, time, path: step.path }] : [], reasons),
  );
}

function ramp(bench: Bench, line: Step, from: number, to: number): Figure<SaidSpan> {
  const rate = typed(
    amountOf(head(line), RAMP),
    text('how fast to {verb}', { verb: line.verb }),
    inRecipe(bench, line.path),
  );
  return ifKnown(rate, (rate, reasons) =>
    knownBy({ from, to, time: rate.si === 0 ? 0 : Math.abs((to - from) / rate.si), path: line.path }, reasons),
  );
}

function hold(bench: Bench, line: Step, temperature: number): Figure<SaidSpan> {
  const time = typed(
    typedTime(line)?.amount,
    text('how long to {verb}', { verb: line.verb }),
    inRecipe(bench, line.path),
  );
  return ifKnown(time, (time, reasons) =>
    knownBy({ from: temperature, to: temperature, time: time.si, path: line.path }, reasons),
  );
}
