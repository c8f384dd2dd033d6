import { stepAt } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  type FigureDefinition,
  ifKnown,
  isKnown,
  known,
  knownBy,
  reason,
  text,
  whenKnown,
} from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { fromTable, measures, NOTHING, ofStepAlone, rowOf, times, total } from './rates.ts';
import { typedTime } from './reading.ts';
import { ownStanding } from './standing.ts';

/** Hands-on time of one pair of hands, s; on a new mould where that matters. */
export const stepWorkingTime: FigureDefinition<number> = defineFigure<number>('step_working_time', (bench, path) => {
  const step = stepAt(bench, path);
  if (!isKnown(step)) return step;
  const own = ownWork(bench, step.value);
  const inside = linesAtWork(step.value);
  if (inside.length === 0) return own;
  return whenKnown({ own, inside: allKnown(inside.map((s) => bench.ask(stepWorkingTime, s.path))) }, (v, reasons) =>
    knownBy(v.own + v.inside.reduce((sum, t) => sum + t, 0), reasons),
  );
});

/** Blocks whose lines are work of their own; what stands in `infuse` and `cure` is part of the one step. */
const BLOCKS_AT_WORK = ['kit'];

const linesAtWork = ({ verb, steps }: Step): readonly Step[] =>
  steps !== undefined && BLOCKS_AT_WORK.includes(verb) ? steps : [];

const noTime = known(0);

function ownWork(bench: Bench, step: Step): Figure<number> {
  const row = rowOf(bench, step);
  const said = row.typed === 'working' ? typedTime(step) : undefined;
  if (said !== undefined) {
    const count = said.each ? times(bench, step) : 1;
    return known(
      said.amount.si * count,
      reason(
        'typed',
        count > 1
          ? text('{time} each, {count} times', { time: said.amount, count })
          : text('{time}', { time: said.amount }),
        { at: inRecipe(bench, said.path) },
      ),
    );
  }
  if (row.working.length === 0) return noTime;
  if (ofStepAlone(row)) return known(total(row.working, NOTHING), fromTable(step, row));
  const sizes = measures(bench, step);
  if (!isKnown(sizes)) return sizes;
  return known(total(row.working, sizes.value), fromTable(step, row, sizes.reasons));
}

/** Time in which nobody is needed, s: drying, gelling, curing, holding. */
export const stepStandingTime: FigureDefinition<number> = defineFigure<number>('step_standing_time', (bench, path) => {
  const step = stepAt(bench, path);
  if (!isKnown(step)) return step;
  const own = ownStanding(bench, step.value);
  const inside = linesAtWork(step.value);
  if (inside.length === 0) return own;
  const more = ifKnown(allKnown(inside.map((s) => bench.ask(stepStandingTime, s.path))), (each) =>
    known(each.reduce((sum, t) => sum + t, 0)),
  );
  return whenKnown({ own, more }, (v, reasons) => knownBy(v.own + v.more, reasons));
});
