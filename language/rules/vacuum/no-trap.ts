import { text } from '../../../calc/figure/figure.ts';
import { reportMissing, type Wanted } from '../kit/missing-step.ts';
import { rule } from '../rule.ts';

const TRAP: Wanted = {
  step: 'trap',
  kinds: ['infusion', 'bagged'],
  message: text('no catch pot: what runs out of the bag ends in the pump, and the gauge reads the pump'),
  line: () => 'trap',
};

export const vacuumNoTrap = rule({
  name: 'vacuum/no-trap',
  severity: 'warning',
  title: 'no catch pot between bag and pump',
  on: 'recipe',
  check: (context) => reportMissing(context, TRAP),
});
