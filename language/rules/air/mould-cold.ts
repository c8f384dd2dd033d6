import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { addStep } from '../kit/missing-step.ts';
import { asTyped, kelvin, kelvinDifference } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { COLDEST } from '../resin/below-temperature.ts';
import { rule } from '../rule.ts';

const COLDER: Usual = {
  habit: 'mould_cold',
  what: 'mould colder than the air',
  value: kelvinDifference(3),
  source: 'common practice',
};

export const airMouldCold = rule({
  name: 'air/mould-cold',
  severity: 'info',
  title: 'the mould is colder than the shop',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const ambient = context.bench.shop?.ambient;
    const [colder, coldest] = [usual(context.bench, COLDER), usual(context.bench, COLDEST)];
    if (
      process?.temperature === undefined ||
      ambient === undefined ||
      ambient.value === UNKNOWN ||
      !isKnown(colder) ||
      !isKnown(coldest)
    )
      return;
    const apart = ambient.value.si - process.temperature.si;
    // colder still is too cold altogether, which resin/below-temperature reports
    if (
      apart <= colder.value + 1e-9 ||
      process.temperature.si < coldest.value - 0.5 ||
      firstOf(stepsOf(context), 'heat') !== undefined
    )
      return;
    const shown = {
      mould: kelvin(process.temperature.si),
      air: ambient.value,
      apart: kelvinDifference(apart),
      most: kelvinDifference(colder.value),
    };
    context.report({
      at: `${process.path}.temperature`,
      message: text(
        'the mould at {mould} is {apart} colder than the shop at {air}, {most} at the most: it sets the gel time, and takes hours to follow the air',
        shown,
      ),
      related: [{ at: ambient.at, message: text('the air of the shop') }],
      fixes: [addStep(context, 'heat', `heat tool to ${asTyped(ambient.value)}`)],
    });
  },
});
