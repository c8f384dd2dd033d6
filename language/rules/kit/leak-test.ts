import { text, type Usual } from '../../../calc/figure/index.ts';
import type { Amount, Step } from '../../../calc/model/index.ts';
import { amountOf, head } from '../../../calc/plan/reading.ts';
import { PRESSURE, TIME } from '../../../calc/quantity/index.ts';
import type { Fix } from '../../lower/index.ts';
import type { RecipeContext } from '../rule.ts';
import { habitOf } from './habit.ts';
import { mendText, TYPED_PRESSURE, TYPED_TIME } from './mend-text.ts';
import { asTyped, pascals, seconds } from './shown.ts';
import { allOf, stepsOf } from './steps.ts';

/** What a bag may lose in one minute. */
export const MOST_LOST: Usual = {
  habit: 'leak_most',
  what: 'the most that a bag may lose in a minute',
  value: pascals(200),
  source: 'published limits run from 2.3 to 13.5 mbar a minute; the strictest of them, rounded',
};
export const SHORTEST_TEST: Usual = {
  habit: 'test',
  what: 'shortest leak test',
  value: seconds(300),
  source: 'common practice',
};

/** `leak test 5 mbar in 10 min`, as far as it is said. */
export interface SaidTest {
  readonly step: Step;
  readonly rise?: Amount;
  readonly time?: Amount;
}

export function leakTests(context: RecipeContext): readonly SaidTest[] {
  return allOf(stepsOf(context), 'leak test').map(({ step }) => {
    const said = head(step);
    return { step, rise: amountOf(said, PRESSURE), time: amountOf(said, TIME) };
  });
}

const MILLIBAR = 100;

/** Writes a test that is long enough, at the rate that was typed or at the most that is allowed: one edit for both faults. */
export function soundTest(context: RecipeContext, { step, rise, time }: SaidTest): Fix | undefined {
  if (time === undefined || !(time.si > 0)) return undefined;
  const long = Math.max(time.si, habitOf(context.bench, SHORTEST_TEST));
  const most = (habitOf(context.bench, MOST_LOST) * long) / 60;
  const typed = rise === undefined ? undefined : (rise.si / time.si) * long;
  const allowed =
    typed === undefined || (typed <= most * 1.001 && long === time.si)
      ? undefined
      : Math.max(
          MILLIBAR,
          typed <= most ? Math.round(typed / MILLIBAR) * MILLIBAR : Math.floor(most / MILLIBAR) * MILLIBAR,
        );
  const [pressure, lasts] = [allowed === undefined ? undefined : asTyped(pascals(allowed)), asTyped(seconds(long))];
  return context.edit.together(
    pressure === undefined
      ? text('Test for {what}', { what: lasts })
      : text('Allow {what}', { what: `${pressure} in ${lasts}` }),
    long > time.si ? mendText(context, '', step.path, TYPED_TIME, lasts) : undefined,
    pressure === undefined ? undefined : mendText(context, '', step.path, TYPED_PRESSURE, pressure),
  );
}
