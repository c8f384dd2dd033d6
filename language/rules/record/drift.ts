import { text } from '../../../calc/figure/figure.ts';
import { allKnown, isKnown, type Usual } from '../../../calc/figure/index.ts';
import { layerDryMass, mass as massFigure } from '../../../calc/laminate/mass.figure.ts';
import { MASS, PRESSURE, TIME } from '../../../calc/quantity/index.ts';
import { resinInPart } from '../../../calc/resin/needs.figure.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { leakOfLimit } from '../../../calc/vacuum/leak.ts';
import { leakLimit } from '../../../calc/vacuum/vacuum.figure.ts';
import { habitOf } from '../kit/habit.ts';
import { amountIn, planOf, readingsOf } from '../kit/record-plan.ts';
import { about, kilograms, pascals, seconds, share } from '../kit/shown.ts';
import { type Checks, type RecipeContext, rule } from '../rule.ts';

const MOST: Usual = { habit: 'drift', what: 'mass off the plan', value: share(0.1), source: 'common practice' };

/** So many times the plan is a slip of the pen: a dry part weighs about a third of it, one drowned in resin twice of it. */
const SLIP = 4;

export const recordDrift = rule({
  name: 'record/drift',
  severity: 'warning',
  title: 'the part came out otherwise than planned',
  on: 'record',
  check(context) {
    const plan = planOf(context);
    if (
      plan === undefined ||
      (context.record.revision !== undefined && context.record.revision !== plan.recipe.revision)
    )
      return;
    massDrift(context, plan);
    leakDrift(context, plan);
  },
});

/** A mass says how much resin there is: the cloth is the same. Parts that are cut to size are weighed before or after, and say nothing. */
function massDrift(context: Checks['record'], plan: RecipeContext): void {
  const reading = readingsOf(context.record, 'mass')[0];
  const found = amountIn(reading, MASS);
  // a record that says what was done otherwise has its reason
  if (reading === undefined || found === undefined || readingsOf(context.record, 'differs').length > 0) return;
  const planned = plan.ask(massFigure);
  const stack = plan.ask(laidStack);
  const resin = plan.ask(resinInPart, '');
  if (!isKnown(planned) || !isKnown(stack) || !isKnown(resin)) return;
  const off = found.si / planned.value - 1;
  if (planned.value > 0 && (off >= SLIP - 1 || off <= 1 / SLIP - 1)) {
    context.report({
      at: reading.path,
      message: text('a mass of {mass}, and {plan} were planned: look at the unit and the point', {
        mass: found,
        plan: kilograms(about(planned.value)),
      }),
    });
    return;
  }
  if (!(planned.value > 0) || Math.abs(off) <= habitOf(plan.bench, MOST)) return;
  if (stack.value.layers.some(({ layer }) => layer.extent.kind === 'to trim')) return;
  const cloth = allKnown(stack.value.layers.filter(isCloth).map(({ key }) => plan.ask(layerDryMass, key)));
  if (!isKnown(cloth)) return;
  const fibre = cloth.value.reduce((sum, each) => sum + each, 0);
  const now = resin.value.total + found.si - planned.value;
  const shown = {
    found,
    planned: kilograms(about(planned.value)),
    off: share(about(Math.abs(off))),
    by_plan: share(about(fibre / (fibre + resin.value.total))),
    now: share(about(fibre / (fibre + now))),
  };
  context.report({
    at: reading.path,
    message:
      now <= 0
        ? text(
            '{found} is {off} under the plan of {planned}, less than the dry layers weigh: is a layer missing, or the scale off?',
            shown,
          )
        : off > 0
          ? text(
              '{found} is {off} over the plan of {planned}: if it is all resin, {now} fibre by weight instead of {by_plan}',
              shown,
            )
          : text(
              '{found} is {off} under the plan of {planned}: if it is all resin, {now} fibre by weight instead of {by_plan}',
              shown,
            ),
  });
}

function leakDrift(context: Checks['record'], plan: RecipeContext): void {
  const reading = readingsOf(context.record, 'leak')[0];
  if (reading === undefined) return;
  const [rise, time] = [amountIn(reading, PRESSURE), amountIn(reading, TIME)];
  const limit = plan.ask(leakLimit);
  if (rise === undefined || time === undefined || !isKnown(limit)) return;
  const times = leakOfLimit({ rise: rise.si, time: time.si }, limit.value);
  if (typeof times !== 'number' || times <= 1.001) return;
  const shown = {
    rise,
    time,
    times: about(times),
    limit: pascals(limit.value.rise),
    within: seconds(limit.value.time),
  };
  context.report({
    at: reading.path,
    message: text(
      '{rise} in {time} is {times} times what the plan allows, {limit} in {within}: the part was built with a leak',
      shown,
    ),
  });
}
