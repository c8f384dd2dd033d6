import { text, type Usual } from '../../../calc/figure/index.ts';
import { amountOf, flat, hasWord, subject } from '../../../calc/plan/reading.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { habitOf } from '../kit/habit.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** How far a caul ends before the edge or the dam. */
const LEAST: Usual = {
  habit: 'caul',
  what: 'how far a caul ends before the edge at least',
  value: metres(0.003),
  source: 'common practice: 3 to 20 mm',
};
/** What is written where the shop bears it, m. */
const USUAL = 0.005;

export const caulNoEdgeRelief = rule({
  name: 'caul/no-edge-relief',
  severity: 'warning',
  title: 'a caul lies over the edge of the part',
  on: 'recipe',
  check(context) {
    for (const { step } of allOf(stepsOf(context), 'caul')) {
      const least = habitOf(context.bench, LEAST);
      const clause = step.clauses.find((each) => hasWord(flat(each), 'short', 'past', 'inside', 'outside'));
      const typed = clause === undefined ? undefined : amountOf(flat(clause), LENGTH);
      const short =
        typed === undefined || clause === undefined
          ? undefined
          : hasWord(flat(clause), 'short', 'inside')
            ? typed.si
            : -typed.si;
      const round = context.recipe.part?.edge?.kind === 'round' || context.recipe.part?.sides !== undefined;
      if (short === undefined ? !round : short >= least - 1e-9) continue;
      const right = `${asTyped(metres(Math.max(USUAL, least)))} short of edge`;
      const shown = { caul: subject(step) ?? 'the caul', least: metres(least) };
      context.report({
        at: clause?.path ?? step.path,
        message: text(
          '{caul} reaches over the edge: it bears on the radius, leaves a sharp step and keeps the bag off; {least} or more short of the edge',
          shown,
        ),
        fixes: [
          clause === undefined
            ? context.edit.addClause(text('End it {what}', { what: right }), step.path, right)
            : context.edit.replace(text('End it {what}', { what: right }), clause.path, right),
        ],
      });
    }
  },
});
