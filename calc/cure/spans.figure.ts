import { stepAt } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  isKnown,
  knownBy,
  missing,
  text,
  typed,
} from '../figure/index.ts';
import type { Amount, Step } from '../model/index.ts';
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
export const heatSpans = defineFigure<readonly SaidSpan[]>('heat_spans', (bench, path) => {
  const found = stepAt(bench, path);
  const start = bench.ask(workTemperature);
  if (!isKnown(found) || !isKnown(start)) return missing(found, start);
  const step = found.value;
  if (!HEATED.includes(step.verb)) return standing(bench, step, start.value);
  let temperature = start.value;
  const spans: Figure<SaidSpan>[] = [];
  for (const line of step.steps === undefined || step.steps.length === 0 ? [step] : step.steps) {
    const from = temperature;
    temperature = temperatureOf(line)?.si ?? from;
    const ramps = line.verb === 'ramp' || line.verb === 'cool';
    if (!ramps && line !== step && line.verb !== 'hold') continue;
    spans.push(ramps ? ramp(bench, line, from, temperature) : hold(bench, line, temperature));
  }
  return allKnown(spans);
});

/** The temperature that a line says, at once or behind `at`. */
function temperatureOf(line: Step): Amount | undefined {
  let said = amountOf(head(line), TEMPERATURE);
  for (const clause of line.clauses) {
    if (said !== undefined) break;
    if (clause.word === 'at') said = amountOf(clause.arguments, TEMPERATURE);
  }
  return said;
}

function standing(bench: Bench, { path }: Step, temperature: number): Figure<readonly SaidSpan[]> {
  const found = bench.ask(stepStandingTime, path);
  if (!isKnown(found)) return found;
  const time = found.value;
  return knownBy(time > 0 ? [{ from: temperature, to: temperature, time, path }] : [], found.reasons);
}

function ramp(bench: Bench, line: Step, from: number, to: number): Figure<SaidSpan> {
  const words = text('how fast to {verb}', { verb: line.verb });
  const rate = typed(amountOf(head(line), RAMP), words, inRecipe(bench, line.path));
  if (!isKnown(rate)) return rate;
  const { si } = rate.value;
  return knownBy({ from, to, time: si === 0 ? 0 : Math.abs((to - from) / si), path: line.path }, rate.reasons);
}

function hold(bench: Bench, line: Step, temperature: number): Figure<SaidSpan> {
  const words = text('how long to {verb}', { verb: line.verb });
  const time = typed(typedTime(line)?.amount, words, inRecipe(bench, line.path));
  if (!isKnown(time)) return time;
  return knownBy({ from: temperature, to: temperature, time: time.value.si, path: line.path }, time.reasons);
}
