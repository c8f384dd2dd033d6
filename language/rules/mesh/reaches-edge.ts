import { text } from '../../../calc/figure/index.ts';
import { amountOf, flat, pastEdge, subject } from '../../../calc/plan/reading.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { habitOf } from '../kit/habit.ts';
import { type FlowLine, linesOf } from '../kit/lines.ts';
import { metres } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { BRAKE, usualBrake } from '../kit/written.ts';
import { rule } from '../rule.ts';

const reaches = (past: number, { around, outside }: FlowLine): boolean =>
  around === undefined ? outside.some((far) => far >= 0 && past >= far) : past >= around;

export const meshReachesEdge = rule({
  name: 'mesh/reaches-edge',
  severity: 'error',
  title: 'the flow mesh leaves no brake before the edge',
  on: 'recipe',
  check(context) {
    const brake = habitOf(context.bench, BRAKE);
    for (const { step } of allOf(stepsOf(context), 'mesh')) {
      const past = pastEdge(step);
      if (past === undefined || -past >= brake - 1e-9) continue;
      // one that reaches a vent is told by mesh/on-vent
      if (past > 0 && linesOf(context, 'vent').some((vent) => reaches(past, vent))) continue;
      const clause = step.clauses.find((each) => amountOf(flat(each), LENGTH) !== undefined);
      const mesh = subject(step) ?? 'the mesh';
      const shown = { mesh, reach: metres(Math.abs(past)), least: metres(brake) };
      context.report({
        at: clause?.path ?? step.path,
        message:
          past > 0
            ? text(
                '{mesh} runs {reach} past the edge: it ends at least {least} short of it, or the resin races to the vent',
                shown,
              )
            : text(
                '{mesh} stops {reach} short of the edge: less than {least} is no brake, the resin races to the vent',
                shown,
              ),
        fixes:
          clause === undefined
            ? []
            : [
                context.edit.replace(
                  text('End the mesh {what} short of the edge', { what: usualBrake(context.bench) }),
                  clause.path,
                  `${usualBrake(context.bench)} short of edge`,
                ),
              ],
      });
    }
  },
});
