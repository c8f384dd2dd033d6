import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { share } from '../kit/shown.ts';
import { before, stepsOf } from '../kit/steps.ts';
import { familyOf, keyed, wettedLayers } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

const MOST: Usual = {
  habit: 'humid',
  what: 'humidity for open epoxy',
  value: share(0.75),
  source: 'common practice: 75 to 80 % RH',
};

export const airHumid = rule({
  name: 'air/humid',
  severity: 'warning',
  title: 'open epoxy is recoated in humid air',
  on: 'recipe',
  check(context) {
    const humidity = context.bench.shop?.humidity;
    const most = usual(context.bench, MOST);
    if (
      humidity === undefined ||
      humidity.value === UNKNOWN ||
      !isKnown(most) ||
      humidity.value.si <= most.value + 1e-9
    )
      return;
    const wetted = wettedLayers(context).filter(({ resin }) => familyOf(context, resin) === 'epoxy');
    const first = wetted[0];
    const next = wetted.find(({ worked }) => worked !== first?.worked);
    if (first === undefined || next === undefined) return;
    const steps = stepsOf(context);
    if (
      keyed(
        steps.filter(
          (worked) => before(steps, next.worked).includes(worked) && !before(steps, first.worked).includes(worked),
        ),
      )
    )
      return;
    const shown = {
      humidity: share(humidity.value.si),
      most: share(most.value),
      first: first.laid.name,
      next: next.laid.name,
    };
    context.report({
      at: next.worked.step.path,
      message: text(
        '{next} goes on {first} in air of {humidity} RH: over {most} open epoxy blushes, and the next layer lies on amine and water; wash it, or dry the air',
        shown,
      ),
      related: [{ at: humidity.at, message: text('the air of the shop') }],
    });
  },
});
