import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchesOf, largestPot, massExponent, potLifeOf } from '../../../calc/resin/pot-mass.ts';
import { viscosityAt } from '../../../calc/resin/viscosity.ts';
import { factorPer10K, gelAtDose, timeByFactor, workingTimeAt } from '../../../calc/resin/working-time.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const shopTemperature = fc.double({ min: kelvin(5), max: kelvin(60), noNaN: true });

describe('viscosity at a temperature', () => {
  const readings = [
    { temperature: kelvin(30), value: 0.18 },
    { temperature: kelvin(23), value: 0.29 },
  ];

  it('goes through its readings and falls as it gets warmer', () => {
    for (const r of readings) {
      expectWithin(valueOf(viscosityAt(readings, r.temperature)).value, r.value, 1e-12);
      expect(valueOf(viscosityAt(readings, r.temperature)).method).toBe('read');
    }
    fc.assert(
      fc.property(shopTemperature, shopTemperature, (a, b) => {
        const [cold, warm] = a < b ? [a, b] : [b, a];
        const [thick, thin] = [valueOf(viscosityAt(readings, cold)).value, valueOf(viscosityAt(readings, warm)).value];
        expect(thick).toBeGreaterThanOrEqual(thin);
      }),
    );
  });

  it('says how it was found', () => {
    expect(valueOf(viscosityAt(readings, kelvin(26))).method).toBe('between readings');
    expect(valueOf(viscosityAt(readings, kelvin(15))).method).toBe('beyond readings');
    expect(valueOf(viscosityAt(readings.slice(0, 1), kelvin(26))).method).toBe('usual rule');
    expect(problemOf(viscosityAt([], kelvin(26)))).toMatch(/no viscosity/);
    const wrong = [
      { temperature: kelvin(20), value: 0.1 },
      { temperature: kelvin(30), value: 0.2 },
    ];
    expect(problemOf(viscosityAt(wrong, kelvin(25)))).toMatch(/do not fall/);
    expect(problemOf(viscosityAt(readings, -1))).toMatch(/absolute temperature/);
  });

  it('takes the two readings next to the temperature', () => {
    const three = [...readings, { temperature: kelvin(50), value: 0.08 }];
    const between = valueOf(viscosityAt(three, kelvin(40))).value;
    expect(between).toBeGreaterThan(0.08);
    expect(between).toBeLessThan(0.18);
    expectWithin(
      valueOf(viscosityAt(three, kelvin(20))).value,
      valueOf(viscosityAt(readings, kelvin(20))).value,
      1e-12,
    );
  });
});

describe('pot life and gel time', () => {
  it('halve for each 10 K where one reading is all there is', () => {
    const reading = { temperature: kelvin(23), value: 6600 };
    expectWithin(valueOf(workingTimeAt([reading], kelvin(33))).value, 3300, 1e-12);
    expectWithin(valueOf(workingTimeAt([reading], kelvin(13), 1.5)).value, 9900, 1e-12);
    expect(problemOf(timeByFactor(reading, kelvin(33), 1))).toMatch(/more than 1/);
  });

  it('go through two readings', () => {
    const readings = [
      { temperature: kelvin(20), value: 4000 },
      { temperature: kelvin(30), value: 1800 },
    ];
    expectWithin(valueOf(workingTimeAt(readings, kelvin(20))).value, 4000, 1e-12);
    expectWithin(valueOf(workingTimeAt(readings, kelvin(30))).value, 1800, 1e-12);
    expectWithin(
      valueOf(factorPer10K(readings[0] ?? { temperature: 0, value: 0 }, readings[1] ?? { temperature: 0, value: 0 })),
      4000 / 1800,
      1e-12,
    );
    expect(
      problemOf(
        workingTimeAt(
          [...readings].map((r) => ({ ...r, value: 1 / r.value })),
          kelvin(25),
        ),
      ),
    ).toMatch(/shorter/);
  });

  it('fall as the dose of catalyst grows, through both readings', () => {
    const [a, b] = [
      { dose: 0.015, value: 1080 },
      { dose: 0.01, value: 1920 },
    ];
    expectWithin(valueOf(gelAtDose(a, b, 0.01)), 1920, 1e-12);
    expectWithin(valueOf(gelAtDose(a, b, 0.015)), 1080, 1e-12);
    expect(valueOf(gelAtDose(a, b, 0.02))).toBeLessThan(1080);
    expect(problemOf(gelAtDose(a, a, 0.02))).toMatch(/same dose/);
  });
});

describe('the mass in the pot', () => {
  const reading = { mass: 0.15, value: 6600 };

  it('only ever shortens pot life, and the largest pot lives just as long as is wanted', () => {
    const mass = fc.double({ min: 0.01, max: 20, noNaN: true });
    fc.assert(
      fc.property(mass, mass, (a, b) => {
        const [small, big] = a < b ? [a, b] : [b, a];
        expect(valueOf(potLifeOf(reading, small))).toBeGreaterThanOrEqual(valueOf(potLifeOf(reading, big)));
        expectWithin(valueOf(largestPot(reading, valueOf(potLifeOf(reading, a)))), a, 1e-9);
      }),
    );
    expectWithin(valueOf(potLifeOf(reading, 0.15 * 8)), 3300, 1e-12);
  });

  it('takes its exponent from two readings of a data sheet', () => {
    expectWithin(valueOf(massExponent(reading, { mass: 0.6, value: 3300 })), 0.5, 1e-12);
    expect(problemOf(massExponent(reading, { mass: 0.6, value: 7000 }))).toMatch(/shorter/);
  });

  it('is mixed in the fewest equal batches', () => {
    expect(batchesOf(1.15, 0.5)).toMatchObject({ batches: 3 });
    expect(batchesOf(1, 0.5)).toEqual({ batches: 2, mass: 0.5 });
    expect(batchesOf(0.2, 0.5)).toEqual({ batches: 1, mass: 0.2 });
    expect(problemOf(batchesOf(1e300, 1e-10))).toMatch(/batches/);
  });
});
