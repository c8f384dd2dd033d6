import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import { mendText, TYPED_TEMPERATURE } from '../kit/mend-text.ts';
import { asTyped, kelvin } from '../kit/shown.ts';
import { firstOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** Resin, mould and dry stack. */
export const COLDEST: Usual = {
  habit: 'coldest',
  what: 'the coldest that resin is worked at',
  value: kelvin(288.15),
  source: 'trade magazine 2021: mould, stack and resin above 60 degF (15.6 degC)',
};

/** What is written where the shop bears it, K: 20 degC. */
const USUAL = 293.15;

export const resinBelowTemperature = rule({
  name: 'resin/below-temperature',
  severity: 'error',
  title: 'resin is worked too cold to cure',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const temperature = context.ask(workTemperature);
    const coldest = usual(context.bench, COLDEST);
    if (process === undefined || process.kind === 'prepreg' || !isKnown(temperature) || !isKnown(coldest)) return;
    if (temperature.value >= coldest.value - 0.5 || firstOf(stepsOf(context), 'heat') !== undefined) return;
    const typed = process.temperature !== undefined;
    const warm = asTyped(kelvin(Math.max(USUAL, coldest.value)));
    const ambient = context.bench.shop?.ambient;
    const shown = {
      temperature: kelvin(temperature.value),
      coldest: kelvin(coldest.value),
      resin: process.resin ?? 'the resin',
    };
    context.report({
      at: typed ? `${process.path}.temperature` : process.path,
      message: text(
        '{resin} at {temperature}: below {coldest} it thickens, gels late and may never cure fully; warm tool, cloth and resin first',
        shown,
      ),
      related:
        typed || ambient === undefined
          ? []
          : [{ at: ambient.at, message: text('the shop is at {temperature}', shown) }],
      fixes: typed
        ? [
            mendText(
              context,
              text('Work at {what}', { what: warm }),
              `${process.path}.temperature`,
              TYPED_TEMPERATURE,
              warm,
            ),
          ]
        : [],
    });
  },
});
