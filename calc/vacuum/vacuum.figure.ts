import { processSteps } from '../bag/bag.figure.ts';
import {
  cannot,
  defineFigure,
  type Figure,
  factOf,
  ifKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { type Amount, UNKNOWN } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { amountOf, head } from '../plan/reading.ts';
import { LENGTH, PRESSURE, TIME } from '../quantity/index.ts';
import { standardPressure } from './atmosphere.ts';
import { absoluteFromGauge } from './gauge.ts';
import { leakRate } from './leak.ts';
import { drivingPressure as drivingFormula, pumpLeaves as pumpFormula } from './pump.ts';

/** Pressure of the air at the elevation of the shop, Pa. */
export const airPressure = defineFigure<number>('air_pressure', (bench) => {
  const elevation = bench.shop?.elevation;
  const height: Figure<number> =
    elevation === undefined
      ? known(
          0,
          reason('trade', text('elevation {height}', { height: quantity(0, LENGTH) }), {
            source: 'no elevation is stated: sea level',
          }),
        )
      : ifKnown(factOf(elevation, 'the elevation of the shop', elevation.at), (e, reasons) => knownBy(e.si, reasons));
  return ifKnown(height, (height, reasons) =>
    worked(standardPressure(height), 'standard atmosphere', { source: 'ISO 2533:1975', reasons }),
  );
});

/** A vacuum as it was said, absolute; Pa. */
function absolute(amount: Amount, air: number): Figure<number> {
  if (amount.basis === 'absolute') return known(amount.si);
  if (amount.basis === 'gauge')
    return worked(absoluteFromGauge(amount.si, air), text('{gauge} below the air outside', { gauge: amount }));
  return cannot(reason('typed', text('{amount} is not said absolute or gauge', { amount })));
}

/** Pressure that the pump leaves in a tight bag, absolute; Pa. */
export const pumpLeaves = defineFigure<number>('pump_leaves', (bench) => {
  const pump = bench.shop?.pump;
  return whenKnown(
    {
      pump: factOf(pump, 'what the pump leaves', { entry: bench.shop?.entry ?? 'shop', path: 'pump' }),
      air: bench.ask(airPressure),
    },
    ({ pump: amount, air }, reasons) => {
      if (amount.basis === 'gauge')
        return worked(
          pumpFormula({ gaugeAtSeaLevel: amount.si }, air),
          'the share of the air that the pump leaves at sea level',
          { reasons },
        );
      if (amount.basis === 'absolute')
        return worked(pumpFormula({ absolute: amount.si }, air), 'as the pump is rated', { reasons });
      return cannot(reason('shop', text('{amount} is not said absolute or gauge', { amount }), { at: pump?.at }));
    },
  );
});

/** Pressure in the bag while it fills, absolute, Pa: the last `vacuum` before a feed is opened, else what the pump leaves. */
export const bagPressure = defineFigure<number>('bag_pressure', (bench) =>
  whenKnown({ steps: bench.ask(processSteps), air: bench.ask(airPressure) }, ({ steps, air }) => {
    const opened = steps.findIndex((s) => s.verb === 'open' || s.verb === 'infuse');
    const set = (opened < 0 ? steps : steps.slice(0, opened)).findLast((s) => s.verb === 'vacuum');
    const amount = set === undefined ? undefined : amountOf(head(set), PRESSURE);
    if (set === undefined || amount === undefined) return bench.ask(pumpLeaves);
    return ifKnown(absolute(amount, air), (left, reasons) =>
      known(left, reason('typed', text('vacuum {amount}', { amount }), { at: inRecipe(bench, set.path), reasons })),
    );
  }),
);

/** Pressure that drives the resin, with pot and part at one level; Pa. */
export const drivingPressure = defineFigure<number>('driving_pressure', (bench) =>
  whenKnown({ air: bench.ask(airPressure), bag: bench.ask(bagPressure) }, ({ air, bag }, reasons) =>
    worked(
      drivingFormula(air, bag),
      'air outside less what is left in the bag; each 100 mm that the part lies above the pot takes about 11 mbar off',
      { reasons },
    ),
  ),
);

const USUAL_LEAK = {
  value: quantity(500, PRESSURE),
  within: 600,
  source: 'common practice: 5 mbar in 10 min; published limits run from 2.3 to 13.5 mbar a minute',
};

export interface LeakLimit {
  /** Pa */
  readonly rise: number;
  /** s */
  readonly time: number;
  /** Pa/s */
  readonly rate: number;
}

/** The leak test that a bag must pass: of the recipe, of the shop, of the trade. */
export const leakLimit = defineFigure<LeakLimit>('leak_limit', (bench) =>
  ifKnown(bench.ask(processSteps), (steps) => {
    const test = steps.find((s) => s.verb === 'leak test');
    const rise = test === undefined ? undefined : amountOf(head(test), PRESSURE);
    const time = test === undefined ? undefined : amountOf(head(test), TIME);
    if (test !== undefined && rise !== undefined && time !== undefined) {
      return limit(
        rise.si,
        time.si,
        reason('typed', text('{rise} in {time}', { rise, time }), { at: inRecipe(bench, test.path) }),
      );
    }
    const habit = bench.shop?.habits?.leak;
    if (
      habit !== undefined &&
      habit.value !== UNKNOWN &&
      habit.value.amounts[0] !== undefined &&
      habit.value.within !== undefined
    ) {
      const [own, within] = [habit.value.amounts[0], habit.value.within];
      return limit(
        own.si,
        within.si,
        reason('shop', text('{rise} in {time}', { rise: own, time: within }), { at: habit.at }),
      );
    }
    return limit(
      USUAL_LEAK.value.si,
      USUAL_LEAK.within,
      reason('trade', text('{rise} in {time}', { rise: USUAL_LEAK.value, time: quantity(USUAL_LEAK.within, TIME) }), {
        source: USUAL_LEAK.source,
      }),
    );
  }),
);

function limit(rise: number, time: number, why: ReturnType<typeof reason>): Figure<LeakLimit> {
  const rate = leakRate(rise, time);
  return typeof rate === 'number' ? known({ rise, time, rate }, why) : worked<LeakLimit>(rate, '', { at: why.at });
}
