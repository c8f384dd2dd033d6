import type { Amount, BuildRecord, Reading } from '../model/index.ts';
import { type Dimension, MASS, PRESSURE, sameDimension, TEMPERATURE, TIME } from '../quantity/index.ts';

/** What builds of one recipe are compared by. */
export type BuildQuantity = 'mass' | 'resin' | 'fill' | 'leak' | 'hours';

export const readingsOf = (record: BuildRecord, ...keys: readonly string[]): readonly Reading[] =>
  record.readings.filter(({ key }) => keys.includes(key));

export const amountIn = (reading: Reading | undefined, of: Dimension): Amount | undefined =>
  reading?.amounts.find((amount) => sameDimension(amount.dimension, of));

const sum = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((all, value) => all + value, 0);

/** What was measured of a build, SI: kg, s, and Pa/s of a leak; undefined where the record does not say. */
export function measured(record: BuildRecord, quantity: BuildQuantity): number | undefined {
  const first = (key: string): Reading | undefined => readingsOf(record, key)[0];
  switch (quantity) {
    case 'mass':
      return amountIn(first('mass'), MASS)?.si;
    case 'resin':
      return (
        amountIn(first('resin'), MASS)?.si ??
        sum(readingsOf(record, 'batch').flatMap((reading) => amountIn(reading, MASS)?.si ?? []))
      );
    case 'fill':
      return amountIn(first('fill'), TIME)?.si;
    case 'leak': {
      const [rise, time] = [amountIn(first('leak'), PRESSURE)?.si, amountIn(first('leak'), TIME)?.si];
      return rise === undefined || time === undefined || !(time > 0) ? undefined : rise / time;
    }
    case 'hours':
      return sum(stepTimes(record).map(({ time }) => time));
  }
}

/** Steps that the record times: `step lay 35 min`; s. */
export function stepTimes(record: BuildRecord): readonly { readonly verb: string; readonly time: number }[] {
  return readingsOf(record, 'step').flatMap((reading) => {
    const time = amountIn(reading, TIME)?.si;
    return time === undefined || reading.words.length === 0 ? [] : [{ verb: reading.words.join(' '), time }];
  });
}

/** Temperature that the resin had: of its batch, else of the shop on that day; K. */
export function resinTemperature(record: BuildRecord): number | undefined {
  for (const key of ['batch', 'ambient']) {
    const found = readingsOf(record, key)
      .map((reading) => amountIn(reading, TEMPERATURE)?.si)
      .find((si) => si !== undefined);
    if (found !== undefined) return found;
  }
  return undefined;
}
