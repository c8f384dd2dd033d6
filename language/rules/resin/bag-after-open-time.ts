import { isKnown, text } from '../../../calc/figure/figure.ts';
import { allKnown } from '../../../calc/figure/index.ts';
import { amountOf, clauseWith, flat } from '../../../calc/plan/reading.ts';
import { stepWorkingTime } from '../../../calc/plan/step.figure.ts';
import { TIME } from '../../../calc/quantity/index.ts';
import { openTime } from '../../../calc/resin/time.figure.ts';
import { aboutTime } from '../kit/shown.ts';
import { between, firstOf, stepsOf } from '../kit/steps.ts';
import { peopleOf } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

export const resinBagAfterOpenTime = rule({
  name: 'resin/bag-after-open-time',
  severity: 'error',
  title: 'the bag is pulled after the resin has gone stiff',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    if (process?.kind !== 'bagged') return;
    const steps = stepsOf(context);
    const cloth = firstOf(steps, 'lay cloth');
    const pull = firstOf(steps, 'vacuum') ?? firstOf(steps, 'cure');
    const open = context.ask(openTime, '');
    if (cloth === undefined || pull === undefined || !isKnown(open) || steps.indexOf(pull) < steps.indexOf(cloth))
      return;
    const work = [cloth, ...between(steps, cloth, pull)].filter(({ inside }) => inside === undefined);
    const times = allKnown(work.map(({ step }) => context.ask(stepWorkingTime, step.path)));
    const within = clauseWith(pull.step, 'within');
    const promised = within === undefined ? undefined : amountOf(flat(within), TIME);
    const people = peopleOf(context);
    const takes = isKnown(times) ? times.value.reduce((sum, time) => sum + time, 0) / people : undefined;
    const longest = Math.max(promised?.si ?? 0, takes ?? 0);
    if (longest <= open.value) return;
    const shown = {
      takes: aboutTime(longest),
      open: aboutTime(open.value),
      resin: process.resin ?? 'the resin',
      people,
    };
    const fact = process.resin === undefined ? undefined : context.bench.material(process.resin)?.openTime?.[0];
    context.report({
      at: promised !== undefined && promised.si > open.value && within !== undefined ? within.path : pull.step.path,
      message:
        promised !== undefined && promised.si > open.value
          ? text('vacuum within {takes}: {resin} is open for {open}, then it is too stiff to be pressed', shown)
          : text(
              'from the first wet ply to the vacuum {takes} for {people} people: {resin} is open for {open}, then it is too stiff to be pressed',
              shown,
            ),
      related: [
        {
          at: { entry: context.recipe.entry, path: cloth.step.path },
          message: text('the first wet ply goes down here'),
        },
        ...(fact === undefined ? [] : [{ at: fact.at, message: text('the open time of {resin}', shown) }]),
      ],
    });
  },
});
