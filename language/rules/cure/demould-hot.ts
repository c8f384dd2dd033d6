import { isKnown, text } from '../../../calc/figure/figure.ts';
import type { Usual } from '../../../calc/figure/index.ts';
import { allSaid, amountOf, hasWord } from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { curesOf } from '../kit/cures.ts';
import { habitOf } from '../kit/habit.ts';
import { mendText, TYPED_TEMPERATURE } from '../kit/mend-text.ts';
import { asTyped, kelvin } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

const HOTTEST: Usual = {
  habit: 'demould',
  what: 'hottest that a part leaves the tool',
  value: kelvin(333.15),
  source: 'common practice',
};

/** What is written where the shop bears it, K. */
const COOL = 323.15;

export const cureDemouldHot = rule({
  name: 'cure/demould-hot',
  severity: 'warning',
  title: 'the part leaves the tool hot',
  on: 'recipe',
  check(context) {
    const demould = firstOf(stepsOf(context), 'demould');
    if (demould === undefined) return;
    const { spans } = curesOf(context);
    if (!isKnown(spans)) return;
    const most = habitOf(context.bench, HOTTEST);
    const said = allSaid(demould.step);
    const below = hasWord(said, 'below') ? amountOf(said, TEMPERATURE) : undefined;
    const end = spans.value.at(-1);
    const temperature = Math.min(below?.si ?? Number.POSITIVE_INFINITY, end?.to ?? Number.POSITIVE_INFINITY);
    if (!Number.isFinite(temperature) || temperature <= most + 0.5) return;
    const cool = asTyped(kelvin(Math.min(COOL, most)));
    const shown = { temperature: kelvin(temperature), most: kelvin(most) };
    context.report({
      at: demould.step.path,
      message: text(
        'out of the tool at {temperature}: over {most} it is still soft and bends, and a tool that shrinks otherwise tears it',
        shown,
      ),
      related:
        end === undefined
          ? []
          : [{ at: { entry: context.recipe.entry, path: end.path }, message: text('so the cure ends') }],
      fixes: [
        below === undefined
          ? mendText(context, 'Let it cool first', demould.step.path, /demould/, `demould below ${cool}`)
          : mendText(context, 'Let it cool first', demould.step.path, TYPED_TEMPERATURE, cool),
      ],
    });
  },
});
