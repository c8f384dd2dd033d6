import { text } from '../../../calc/figure/figure.ts';
import { firstClause } from '../../../calc/plan/reading.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const TAPE: Wanted = {
  step: 'tape',
  kinds: ['bagged', 'infusion'],
  message: text('no sealant tape: nothing seals the bag to the tool'),
  line: () => 'tape sealant_12',
};

export const tapeMissing = rule({
  name: 'tape/missing',
  severity: 'error',
  title: 'nothing seals the bag to the tool',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    if (firstOf(steps, 'tape') !== undefined) return;
    const bag = firstOf(steps, 'bag')?.step;
    if (bag !== undefined && firstClause(bag, 'envelope') !== undefined) return;
    reportMissing(context, TAPE);
  },
});
