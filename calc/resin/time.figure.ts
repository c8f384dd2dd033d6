import {
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  factOf,
  isKnown,
  known,
  missing,
  quantity,
  type Reason,
  reason,
  reasonsOf,
  siOf,
  text,
  typed,
  type Words,
  worked,
} from '../figure/index.ts';
import { factPlace } from '../laminate/fraction.figure.ts';
import { type AtCondition, type Fact, type Place, UNKNOWN } from '../model/index.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { TEMPERATURE, TIME } from '../quantity/index.ts';
import type { AtTemperature } from './arrhenius.ts';
import { catalystDose, type Dose, doseAt } from './dose.figure.ts';
import { resinMaterial } from './needs.figure.ts';
import type { TemperatureMethod } from './viscosity.ts';
import { gelAtDose, workingTimeAt } from './working-time.ts';

const ROOM = 293.15;

/** Temperature that resin works at: of the process, else of the shop, else a common room; K. */
export const workTemperature = defineFigure<number>('work_temperature', (bench) => {
  const { process } = bench.recipe;
  if (process?.temperature !== undefined) {
    return known(
      process.temperature.si,
      reason('typed', text('process at {temperature}', { temperature: process.temperature }), {
        at: inRecipe(bench, process.path),
      }),
    );
  }
  const ambient = bench.shop?.ambient;
  return ambient === undefined ? commonRoom : siOf(factOf(ambient, 'the temperature of the shop', ambient.at));
});

const commonRoom = known(
  ROOM,
  reason('trade', text('shop at {temperature}', { temperature: quantity(ROOM, TEMPERATURE) }), {
    source: 'common practice',
  }),
);

const HOW: Readonly<Record<TemperatureMethod, string>> = {
  read: 'as the data sheet reads',
  'between readings': 'between two readings of the data sheet',
  'beyond readings': 'beyond the readings of the data sheet, on the same curve',
  'usual rule': 'halved for each 10 K more, the usual rule',
};

/** The known readings of a fact that is given line by line. */
export function readings(
  facts: readonly Fact<AtCondition>[] | undefined,
  what: Words,
  unsaid: Place,
): Figure<readonly AtCondition[]> {
  const first = facts?.[0];
  if (facts === undefined || first === undefined) return typed<readonly AtCondition[]>(undefined, what, unsaid);
  const values: AtCondition[] = [];
  for (const { value } of facts) if (value !== UNKNOWN) values.push(value);
  if (values.length === 0) return typed<readonly AtCondition[]>(UNKNOWN, what, first.at);
  return known(
    values,
    reason(
      first.at.entry.startsWith('stock/') ? 'stock' : 'typed',
      values.length === 1
        ? text('{what}, 1 reading', { what })
        : text('{what}, {count} readings', { what, count: values.length }),
      { at: first.at, source: first.source },
    ),
  );
}

/** A reading without a temperature was made in a common room. */
const atTemperature = (r: AtCondition): AtTemperature => ({
  temperature: r.temperature?.si ?? ROOM,
  value: r.value.si,
});

function timeAt(
  list: readonly AtTemperature[],
  temperature: number,
  what: Words,
  reasons: readonly Reason[],
  at: Place,
): Figure<number> {
  const found = workingTimeAt(list, temperature);
  if (isImpossible(found))
    return cannot(reason('computed', text('{what}: {problem}', { what, problem: found.problem }), { at }));
  const words = text('{time} at {temperature}, {how}', {
    time: quantity(found.value, TIME),
    temperature: quantity(temperature, TEMPERATURE),
    how: HOW[found.method],
  });
  return known(
    found.value,
    reason('computed', words, {
      source: found.method === 'usual rule' ? 'resin makers: every 10 K halves it' : undefined,
      at,
      reasons,
    }),
  );
}

/** Gel time at the temperature and with the catalyst of the process, s; the key names another resin. */
export const gelTime = defineFigure<number>('gel_time', (bench, key) =>
  gelWith(bench, key, bench.ask(catalystDose, key)),
);

/** Gel time of what one step (its path) lays of a resin, with the catalyst that it says; s. */
export const gelTimeAt = (bench: Bench, key: string, path: string): Figure<number> =>
  gelWith(bench, key, doseAt(bench, key, path));

function gelWith(bench: Bench, key: string, dose: Figure<Dose | undefined>): Figure<number> {
  const found = bench.ask(resinMaterial, key);
  const temperature = bench.ask(workTemperature);
  if (!isKnown(found) || !isKnown(temperature) || !isKnown(dose)) return missing(found, temperature, dose);
  const resin = found.value;
  const at = factPlace(resin, 'gel');
  const what = text('the gel time of {resin}', { resin: resin.name });
  const gel = readings(resin.gel, what, at);
  if (!isKnown(gel)) return gel;
  const list = dose.value === undefined ? gel.value.map(atTemperature) : atDose(gel.value, dose.value.dose);
  if (isImpossible(list)) return worked<number>(list, '', { at });
  return timeAt(list, temperature.value, what, reasonsOf(gel, found, temperature, dose), at);
}

const SAME_DOSE = 1e-6;

/** Readings brought to one dose of catalyst: those at it, else through two doses read at one temperature, else as they are. */
function atDose(gel: readonly AtCondition[], dose: number): Outcome<readonly AtTemperature[]> {
  const same = gel.filter((r) => r.catalyst === undefined || Math.abs(r.catalyst.si - dose) < SAME_DOSE);
  if (same.length > 0) return same.map(atTemperature);
  for (const [i, a] of gel.entries()) {
    const b = gel
      .slice(i + 1)
      .find((r) => r.temperature?.si === a.temperature?.si && r.catalyst?.si !== a.catalyst?.si);
    if (b?.catalyst === undefined || a.catalyst === undefined) continue;
    const value = gelAtDose(
      { dose: a.catalyst.si, value: a.value.si },
      { dose: b.catalyst.si, value: b.value.si },
      dose,
    );
    return following(value, (v) => [{ temperature: a.temperature?.si ?? ROOM, value: v }]);
  }
  return { problem: 'the gel time is given for another dose of catalyst only' };
}

/** How long laid resin may stay open before it is closed up under a bag, s. */
export const openTime = defineFigure<number>('open_time', (bench, key) => {
  const found = bench.ask(resinMaterial, key);
  const temperature = bench.ask(workTemperature);
  if (!isKnown(found) || !isKnown(temperature)) return missing(found, temperature);
  const resin = found.value;
  const at = factPlace(resin, 'open');
  const what = text('the open time of {resin}', { resin: resin.name });
  const open = readings(resin.openTime, what, at);
  if (!isKnown(open)) return open;
  return timeAt(open.value.map(atTemperature), temperature.value, what, reasonsOf(open, found, temperature), at);
});

/** Pot lives of a resin brought to the temperature of the process, with their masses; s and kg. */
export function potLives(
  bench: Bench,
  key: string,
): Figure<readonly { readonly mass: number; readonly value: number }[]> {
  const found = bench.ask(resinMaterial, key);
  const asked = bench.ask(workTemperature);
  if (!isKnown(found) || !isKnown(asked)) return missing(found, asked);
  const resin = found.value;
  const temperature = asked.value;
  const what = text('the pot life of {resin}', { resin: resin.name });
  const at = factPlace(resin, 'pot_life');
  const lives = readings(resin.potLife, what, at);
  if (!isKnown(lives)) return lives;
  const masses = new Set<number>();
  for (const { mass } of lives.value) if (mass !== undefined) masses.add(mass.si);
  if (masses.size === 0) return typed<never>(undefined, text('the mass that {what} was read for', { what }), at);
  const values: { readonly mass: number; readonly value: number }[] = [];
  for (const mass of masses) {
    const life = workingTimeAt(lives.value.filter((r) => r.mass?.si === mass).map(atTemperature), temperature);
    if (isImpossible(life))
      return cannot(reason('computed', text('{what}: {problem}', { what, problem: life.problem }), { at }));
    values.push({ mass, value: life.value });
  }
  const words = text('{what} at {temperature}', { what, temperature: quantity(temperature, TEMPERATURE) });
  return known(values, reason('computed', words, { at, reasons: reasonsOf(lives, found, asked) }));
}
