import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewPoint, saturationPressure } from '../../../calc/air/dew-point.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const kelvin = (celsius: number) => celsius + 273.15;

describe('moist air', () => {
  it.each([
    [0, 611.2],
    [10, 1228],
    [20, 2339],
    [25, 3169],
    [30, 4246],
    [40, 7384],
    [50, 12352],
  ])(
    'is saturated at %i degC with %f Pa of vapour, as steam tables print (IAPWS; values from memory)',
    (t, pressure) => {
      expectWithin(valueOf(saturationPressure(kelvin(t))), pressure, 3e-3);
    },
  );

  it.each([
    // psychrometric tables to 0.1 K, such as those printed in ISO 8502-4 (values from memory)
    [20, 0.5, 9.3],
    [25, 0.6, 16.7],
    [18, 0.85, 15.4],
    [30, 0.8, 26.2],
    [10, 0.7, 4.8],
  ])('of %i degC and a humidity of %f has its dew point at %f degC', (t, humidity, dew) => {
    expect(Math.abs(valueOf(dewPoint(kelvin(t), humidity)) - kelvin(dew))).toBeLessThan(0.11);
  });

  it('has its dew point below its temperature, and at it when saturated', () => {
    fc.assert(
      fc.property(
        fc.double({ min: kelvin(-40), max: kelvin(59), noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (t, rh) => {
          expect(valueOf(dewPoint(t, rh))).toBeLessThanOrEqual(t + 1e-9);
          expectWithin(valueOf(dewPoint(t, 1)), t, 1e-12);
        },
      ),
    );
  });

  it('is not told for what cannot be', () => {
    expect(problemOf(dewPoint(kelvin(20), 0))).toMatch(/humidity/);
    expect(problemOf(dewPoint(kelvin(20), 55))).toMatch(/humidity/);
    expect(problemOf(dewPoint(20, 0.5))).toMatch(/temperature/);
  });
});
