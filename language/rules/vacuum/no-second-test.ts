import { text } from '../../../calc/figure/figure.ts';
import { allOf, between, firstOf, stepsOf } from '../kit/steps.ts';
import { usualTest } from '../kit/written.ts';
import { rule } from '../rule.ts';

/** What moves, opens or warms a bag that has been tested. */
const DISTURBS = ['heat', 'bag', 'tape', 'feed', 'vent', 'mesh', 'peel', 'unwrap', 'intensifier'];

export const vacuumNoSecondTest = rule({
  name: 'vacuum/no-second-test',
  severity: 'warning',
  title: 'the bag is touched after its leak test and not tested again',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const infuse = firstOf(steps, 'infuse');
    const test = infuse === undefined ? undefined : allOf(steps.slice(0, steps.indexOf(infuse)), 'leak test').at(-1);
    if (infuse === undefined || test === undefined) return;
    const touched = between(steps, test, infuse).find(
      ({ step, inside }) => inside === undefined && DISTURBS.includes(step.verb),
    );
    // one that belongs before the first test is out of order, which order/before reports
    if (
      touched === undefined ||
      (firstOf(steps.slice(0, steps.indexOf(test)), touched.step.verb) === undefined && touched.step.verb !== 'heat')
    )
      return;
    context.report({
      at: touched.step.path,
      message: text(
        '{step} after the leak test: what is warmed, moved or opened leaks anew; test again before the resin',
        { step: touched.step.verb },
      ),
      related: [{ at: { entry: context.recipe.entry, path: test.step.path }, message: text('the last test') }],
      fixes: [context.edit.lineAfter('Test again', touched.step.path, `leak test ${usualTest(context.bench)}`)],
    });
  },
});
