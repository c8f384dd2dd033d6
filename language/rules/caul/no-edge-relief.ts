import { text } from '../../../calc/figure/figure.ts';
import { amountOf, flat, hasWord, subject } from '../../../calc/plan/reading.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { metres } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** Common practice: a caul ends 3 to 20 mm before the edge or the dam. */
const LEAST = 3e-3;

export const caulNoEdgeRelief = rule({
  name: 'caul/no-edge-relief',
  severity: 'warning',
  title: 'a caul lies over the edge of the part',
  on: 'recipe',
  check(context) {
    for (const { step } of allOf(stepsOf(context), 'caul')) {
      const clause = step.clauses.find((each) => hasWord(flat(each), 'short', 'past', 'inside', 'outside'));
      const typed = clause === undefined ? undefined : amountOf(flat(clause), LENGTH);
      const short =
        typed === undefined || clause === undefined
          ? undefined
          : hasWord(flat(clause), 'short', 'inside')
            ? typed.si
            : -typed.si;
      const round = context.recipe.part?.edge?.kind === 'round' || context.recipe.part?.sides !== undefined;
      if (short === undefined ? !round : short >= LEAST - 1e-9) continue;
      const shown = { caul: subject(step) ?? 'the caul', least: metres(LEAST), most: metres(0.02) };
      context.report({
        at: clause?.path ?? step.path,
        message: text(
          '{caul} reaches over the edge: it bears on the radius, leaves a sharp step and keeps the bag off; {least} to {most} short of the edge',
          shown,
        ),
        fixes: [
          clause === undefined
            ? context.edit.addClause('End it 5 mm short of the edge', step.path, '5 mm short of edge')
            : context.edit.replace('End it 5 mm short of the edge', clause.path, '5 mm short of edge'),
        ],
      });
    }
  },
});
