import { isKnown, text } from '../../../calc/figure/figure.ts';
import { allKnown } from '../../../calc/figure/index.ts';
import { amountOf, clauseWith, flat, hasWord, head, typedTime } from '../../../calc/plan/reading.ts';
import { stepStandingTime, stepWorkingTime } from '../../../calc/plan/step.figure.ts';
import { TIME } from '../../../calc/quantity/index.ts';
import { gelTime, gelTimeAt, openTime } from '../../../calc/resin/time.figure.ts';
import { valueOf } from '../kit/layers.ts';
import { aboutTime } from '../kit/shown.ts';
import { allOf, firstOf, stepsOf, type WorkedStep } from '../kit/steps.ts';
import { peopleOf } from '../kit/wetted.ts';
import { type RecipeContext, rule } from '../rule.ts';

export const resinBagAfterOpenTime = rule({
  name: 'resin/bag-after-open-time',
  severity: 'error',
  title: 'the bag is pulled after the resin has gone stiff',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    if (process?.kind !== 'bagged') return;
    const steps = stepsOf(context);
    const pull = firstOf(steps, 'vacuum') ?? firstOf(steps, 'cure');
    // a leak test pulls full vacuum: from then on the bag presses
    const pressed = firstOf(steps, 'vacuum', 'leak test') ?? pull;
    if (pull === undefined || pressed === undefined) return;
    const wet = wetBefore(steps.slice(0, steps.indexOf(pressed)), valueOf(context.ask(gelTime, '')));
    const cloth = wet[0];
    if (cloth === undefined) return;
    const open = context.ask(openTime, '');
    // one whose sheet says no open time is past pressing when it gels
    const stiff = valueOf(open) ?? valueOf(gelTimeAt(context.bench, process.resin ?? '', cloth.step.path));
    if (stiff === undefined) return;
    const within = clauseWith(pull.step, 'within');
    const promised = within === undefined ? undefined : amountOf(flat(within), TIME);
    const people = peopleOf(context);
    const longest = Math.max(promised?.si ?? 0, timeOf(context, wet, people) ?? 0);
    if (longest <= stiff) return;
    const shown = { takes: aboutTime(longest), open: aboutTime(stiff), resin: process.resin ?? 'the resin', people };
    const material = process.resin === undefined ? undefined : context.bench.material(process.resin);
    const fact = isKnown(open) ? material?.openTime?.[0] : material?.gel?.[0];
    const broken = within !== undefined && promised !== undefined && promised.si > stiff;
    context.report({
      at: broken ? within.path : pull.step.path,
      message: isKnown(open)
        ? broken
          ? text('vacuum within {takes}: {resin} is open for {open}, then it is too stiff to be pressed', shown)
          : text(
              'from the first wet ply to the vacuum {takes} for {people} people: {resin} is open for {open}, then it is too stiff to be pressed',
              shown,
            )
        : text(
            'from the first wet ply to the vacuum {takes}: {resin} gels in {open}, and what has gelled is not pressed any more',
            shown,
          ),
      related: [
        {
          at: { entry: context.recipe.entry, path: cloth.step.path },
          message: text('the first wet ply goes down here'),
        },
        ...(fact === undefined
          ? []
          : [
              {
                at: fact.at,
                message: isKnown(open)
                  ? text('the open time of {resin}', shown)
                  : text('the gel time of {resin}', shown),
              },
            ]),
      ],
    });
  },
});

/**
 * From the first cloth of what is still wet under the bag. What somebody lets go tacky, or gel or cure and lays the next on, is no
 * longer meant to be pressed.
 */
function wetBefore(steps: readonly WorkedStep[], gel: number | undefined): readonly WorkedStep[] {
  const own = steps.filter(({ inside }) => inside === undefined);
  const last = own.findLastIndex(({ classes }) => classes.has('lay cloth'));
  const settled = own.findLastIndex(({ step, classes }, i) => {
    if (step.verb === 'wait' && hasWord(head(step), 'tacky')) return true;
    if (i > last) return false;
    if (classes.has('cure')) return true;
    if (step.verb !== 'wait') return false;
    const time = typedTime(step)?.amount.si ?? 0;
    return hasWord(head(step), 'gel', 'hard', 'cool') || (gel !== undefined && time > gel);
  });
  const fresh = own.slice(settled + 1);
  const first = allOf(fresh, 'lay cloth')[0];
  return first === undefined ? [] : fresh.slice(fresh.indexOf(first));
}

/** What that takes: the work shared by the people of the shop, and what stands; s. */
function timeOf(context: RecipeContext, steps: readonly WorkedStep[], people: number): number | undefined {
  const times = allKnown(
    steps.flatMap(({ step: { path } }) => [context.ask(stepWorkingTime, path), context.ask(stepStandingTime, path)]),
  );
  if (!isKnown(times)) return undefined;
  return times.value.reduce((sum, time, i) => sum + (i % 2 === 0 ? time / people : time), 0);
}
