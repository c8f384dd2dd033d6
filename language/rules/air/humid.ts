import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { gelTime, openTime } from '../../../calc/resin/time.figure.ts';
import { share } from '../kit/shown.ts';
import { familyOf, type Gap, gapBetween, keyed, type Wetted, wettedLayers } from '../kit/wetted.ts';
import { type RecipeContext, rule } from '../rule.ts';

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
    if (humidity === undefined || humidity.value === UNKNOWN) return;
    const most = usual(context.bench, MOST);
    if (!isKnown(most) || humidity.value.si <= most.value + 1e-9) return;
    const wetted = wettedLayers(context);
    // one finding a recipe: the air is the same for all that follows
    const at = wetted.findIndex((first, i) => {
      const next = wetted[i + 1];
      return next !== undefined && next.worked !== first.worked && blushes(context, first, next);
    });
    const [first, next] = [wetted[at], wetted[at + 1]];
    if (first === undefined || next === undefined) return;
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

/** Epoxy that has stood longer than it is open. What goes on it wet on wet finds no blush yet. */
function blushes(context: RecipeContext, first: Wetted, next: Wetted): boolean {
  if (familyOf(context, first.resin) !== 'epoxy' || familyOf(context, next.resin) !== 'epoxy') return false;
  const gap = gapBetween(context, first.worked, next.worked);
  if (!isKnown(gap) || cleaned(gap.value)) return false;
  if (gap.value.untilState) return true;
  const open = context.ask(openTime, first.resin.name);
  const stiff = isKnown(open) ? open : context.ask(gelTime, first.resin.name);
  return isKnown(stiff) && gap.value.time > stiff.value;
}

/** Sanded, fresh from under peel ply, or washed; what goes on a cured face with none of them is told of by bond/not-keyed. */
const cleaned = ({ steps }: Gap): boolean =>
  keyed(steps) || steps.some(({ step, classes }) => step.verb === 'wipe' || classes.has('cure'));
