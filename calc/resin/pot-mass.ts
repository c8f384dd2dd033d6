import { count, demand, following, given, type Outcome, positive } from '../outcome.ts';

/** A pot life (s) read for a mass in the pot (kg). */
export interface AtMass {
  readonly mass: number;
  readonly value: number;
}

/**
 * Pot life falls with the mass in the pot as m^-n. The default n = 1/3 is the share of surface to volume of pots of one
 * shape, by which a bigger pot keeps its heat (reasoning and number from memory; two readings of a data sheet take its
 * place). Poured out thin, resin lives longer than any pot of it.
 */
export const usualMassExponent = 1 / 3;

/** Pot life (s) of `mass` (kg) in one pot: t = t_ref (m / m_ref)^-n. It only ever falls as the mass grows. */
export function potLifeOf(reading: AtMass, mass: number, exponent = usualMassExponent): Outcome {
  return given(
    [...readingDemands(reading, exponent), positive('the mass in the pot', mass)],
    () => reading.value * (mass / reading.mass) ** -exponent,
  );
}

/** The reading whose mass is nearest to a mass (kg), in proportion. */
export const nearestReading = (readings: readonly AtMass[], mass: number): AtMass =>
  readings.reduce((a, b) => (Math.abs(Math.log(b.mass / mass)) < Math.abs(Math.log(a.mass / mass)) ? b : a));

/** No pot is used up in less, s. */
export const shortestUse = 60;

/** The largest mass in one pot (kg) that stays workable for `time` (s). */
export function largestPot(reading: AtMass, time: number, exponent = usualMassExponent): Outcome {
  return given(
    [...readingDemands(reading, exponent), positive('the working time', time)],
    () => reading.mass * (reading.value / time) ** (1 / exponent),
  );
}

/** The exponent that two readings of one resin come to. */
export function massExponent(a: AtMass, b: AtMass): Outcome {
  return given(
    [
      positive('each mass in the pot', Math.min(a.mass, b.mass)),
      positive('each pot life', Math.min(a.value, b.value)),
      demand(a.mass !== b.mass, 'two pot lives of the same mass do not tell how it changes'),
    ],
    () => {
      const exponent = Math.log(a.value / b.value) / Math.log(b.mass / a.mass);
      return exponent > 0 ? exponent : { problem: 'the pot lives given do not get shorter as the mass grows' };
    },
  );
}

/** A mix that is made in several pots, all alike. */
export interface Batches {
  readonly batches: number;
  /** kg in each */
  readonly mass: number;
}

/** The fewest equal batches of no more than `largest` (kg) that make `total` (kg). */
export function batchesOf(total: number, largest: number): Outcome<Batches> {
  return given([positive('the mass to mix', total), positive('the largest batch', largest)], () => {
    const batches = Math.max(1, Math.ceil(total / largest - 1e-9));
    return following(
      given([count('the number of batches', batches)], () => batches),
      (n) => ({ batches: n, mass: total / n }),
    );
  });
}

const readingDemands = (reading: AtMass, exponent: number) => [
  positive('the mass on the data sheet', reading.mass),
  positive('the pot life on the data sheet', reading.value),
  positive('the exponent of the mass', exponent),
];
