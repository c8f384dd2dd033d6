import { processSteps, sheetPast, tapeOffset } from '../../bag/bag.figure.ts';
import { HEM, SHEET_PAST } from '../../bag/habits.ts';
import { text } from '../../figure/figure.ts';
import { type Bench, isKnown, usual } from '../../figure/index.ts';
import type { Step } from '../../model/index.ts';
import type { PartFrame } from '../../outline/part.figure.ts';
import { origin, type Placed } from '../../outline/shape.ts';
import { own } from '../../own.ts';
import { subject } from '../../plan/reading.ts';
import { offsetContours } from './contours.ts';
import { boxRound } from './layer-lines.ts';
import { penOf, type Thing } from './thing.ts';
import { longBy, pastOutline, tagOf } from './words.ts';

/** Sheets over the stack, the tape and the bag, each as far past the outline as it runs. */
export function processThings(bench: Bench, frame: PartFrame): Thing[] {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return [];
  const outline: Placed = { shape: frame.shape, centre: origin };
  return steps.value.flatMap((step) => {
    const past = pastOf(bench, step);
    return past === undefined ? [] : [sheetThing(step, outline, past)];
  });
}

/** How far past the outline a step lays something all round, m; none where it lays nothing of the kind. */
function pastOf(bench: Bench, step: Step): number | undefined {
  if (own(SHEET_PAST, step.verb) !== undefined) {
    const past = sheetPast(bench, step);
    return isKnown(past) ? past.value : undefined;
  }
  if (step.verb !== 'tape' && step.verb !== 'bag') return undefined;
  const tape = bench.ask(tapeOffset);
  const hem = usual(bench, HEM);
  if (!isKnown(tape) || !isKnown(hem)) return undefined;
  return step.verb === 'tape' ? tape.value : tape.value + hem.value;
}

function sheetThing(step: Step, outline: Placed, past: number): Thing {
  const source = { path: step.path, name: step.verb };
  const pen = penOf('process', source);
  const lines = offsetContours(outline, past);
  const { verb } = step;
  const material = subject(step);
  const box = lines.length === 0 ? undefined : boxRound(lines);
  return {
    layer: 'process',
    source,
    what: material === undefined ? text('{verb}', { verb }) : text('{verb}: {material}', { verb, material }),
    where: pastOutline(past),
    size: box === undefined ? text('nothing is left of it') : longBy(box.high.x - box.low.x, box.high.y - box.low.y),
    tag: tagOf(verb, past),
    items: lines.map((line) => pen.line(line, verb === 'tape' ? {} : { dashed: true })),
  };
}
