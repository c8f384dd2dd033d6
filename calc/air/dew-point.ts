import { demand, following, given, type Outcome } from '../outcome.ts';

/**
 * Coefficients over water, -45 degC to 60 degC. Source: WMO-No. 8, Guide to Instruments and Methods of Observation,
 * annex 4.B.
 */
const magnus = { pressure: 611.2, factor: 17.62, offset: 243.12 } as const;
const zeroCelsius = 273.15;

/** Pressure of saturated water vapour (Pa) at an air temperature (K): 6.112 hPa exp(17.62 t / (243.12 + t)). */
export function saturationPressure(temperature: number): Outcome {
  const celsius = temperature - zeroCelsius;
  const known = celsius >= -45 && celsius <= 60;
  return given(
    [demand(known, 'the air temperature must lie between -45 degC and 60 degC')],
    () => magnus.pressure * Math.exp((magnus.factor * celsius) / (magnus.offset + celsius)),
  );
}

/**
 * Dew point (K) of air at a temperature (K) and a relative humidity (0.55 is 55 %): on a colder surface water settles.
 */
export function dewPoint(temperature: number, humidity: number): Outcome {
  const possible = humidity > 0 && humidity <= 1;
  return given([demand(possible, 'the relative humidity must be more than 0 and no more than 100 %')], () =>
    following(saturationPressure(temperature), (saturated) => {
      const log = Math.log((saturated * humidity) / magnus.pressure);
      return zeroCelsius + (magnus.offset * log) / (magnus.factor - log);
    }),
  );
}
