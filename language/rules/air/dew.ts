import { dewPoint } from '../../../calc/air/dew-point.ts';
import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { workTemperature } from '../../../calc/resin/time.figure.ts';
import { kelvin, kelvinDifference, share } from '../kit/shown.ts';
import { COLDEST } from '../resin/below-temperature.ts';
import { rule } from '../rule.ts';

const MARGIN: Usual = {
  habit: 'dew',
  what: 'surface above the dew point',
  value: kelvinDifference(3),
  source: "adhesive supplier's page; ISO 8502-4 is the usual reference, from memory",
};

export const airDew = rule({
  name: 'air/dew',
  severity: 'warning',
  title: 'mould or part is near the dew point of the air',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    const { ambient, humidity } = context.bench.shop ?? {};
    if (process?.kind === undefined || process.kind === 'prepreg') return;
    if (ambient === undefined || ambient.value === UNKNOWN || humidity === undefined || humidity.value === UNKNOWN)
      return;
    const surface = context.ask(workTemperature);
    const margin = usual(context.bench, MARGIN);
    const coldest = usual(context.bench, COLDEST);
    if (!isKnown(surface) || !isKnown(margin)) return;
    const dew = dewPoint(ambient.value.si, humidity.value.si);
    if (typeof dew !== 'number' || surface.value - dew >= margin.value - 1e-9) return;
    // work that is too cold altogether is reported by resin/below-temperature
    if (!isKnown(coldest) || surface.value < coldest.value - 0.5) return;
    const shown = {
      surface: kelvin(surface.value),
      dew: kelvin(dew),
      air: ambient.value,
      humidity: share(humidity.value.si),
      margin: kelvinDifference(margin.value),
    };
    context.report({
      at: process.temperature === undefined ? process.path : `${process.path}.temperature`,
      message: text(
        'mould and part at {surface}, dew point {dew}: less than {margin} apart, water settles on the face and nothing bonds; warm them, or dry the air',
        shown,
      ),
      related: [{ at: humidity.at, message: text('the air of the shop: {air}, {humidity} RH', shown) }],
    });
  },
});
