import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seaLevelPressure, standardPressure } from '../../../calc/vacuum/atmosphere.ts';
import { bagForce } from '../../../calc/vacuum/force.ts';
import { absoluteFromGauge, gaugeFromAbsolute } from '../../../calc/vacuum/gauge.ts';
import { leakOfLimit, leakRate, mbarPerMinute, shortestTest } from '../../../calc/vacuum/leak.ts';
import { drivingPressure, headOf, pumpLeaves } from '../../../calc/vacuum/pump.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const inHg = 3386.389;
const mbar = 100;

describe('the air', () => {
  it('thins as one climbs', () => {
    const elevation = fc.double({ min: -2000, max: 11_000, noNaN: true });
    fc.assert(
      fc.property(elevation, elevation, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(valueOf(standardPressure(low))).toBeGreaterThanOrEqual(valueOf(standardPressure(high)));
      }),
    );
    // tropopause of the standard atmosphere: 22 632 Pa at 11 km (ISO 2533:1975, from memory)
    expectWithin(valueOf(standardPressure(11_000)), 22_632, 1e-4);
    expect(standardPressure(0)).toBe(seaLevelPressure);
    for (const bad of [20_000, -3000, Number.NaN]) expect(problemOf(standardPressure(bad))).toMatch(/elevation/);
  });
});

describe('a gauge', () => {
  it('counts down from the air outside, there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 90_000, noNaN: true }), (absolute) => {
        const gauge = valueOf(gaugeFromAbsolute(absolute, 95_000));
        expectWithin(valueOf(absoluteFromGauge(gauge, 95_000)) + 1, absolute + 1, 1e-9);
      }),
    );
  });

  it('cannot read more than there is: 28 inHg at 1000 m', () => {
    const barometer = valueOf(standardPressure(1000));
    expectWithin(barometer / inHg, 26.5, 2e-3);
    expect(problemOf(absoluteFromGauge(28 * inHg, barometer))).toMatch(/more vacuum than the air outside/);
    expect(problemOf(gaugeFromAbsolute(100_000, barometer))).toMatch(/more than that of the air/);
  });
});

describe('a pump', () => {
  it('leaves what it is rated for, or the same share of thinner air', () => {
    expect(pumpLeaves({ absolute: 1500 }, 80_000)).toBe(1500);
    const rating = { gaugeAtSeaLevel: 28 * inHg };
    expectWithin(valueOf(pumpLeaves(rating, seaLevelPressure)), seaLevelPressure - 28 * inHg, 1e-12);
    expect(valueOf(pumpLeaves(rating, 80_000))).toBeLessThan(seaLevelPressure - 28 * inHg);
    expect(problemOf(pumpLeaves({ gaugeAtSeaLevel: 31 * inHg }, 80_000))).toMatch(/no pump/);
    expect(problemOf(pumpLeaves({ absolute: 90_000 }, 80_000))).toMatch(/pulls nothing/);
  });

  it('drives resin less the head that it must climb', () => {
    const head = valueOf(headOf(1100, 1));
    expect(drivingPressure(seaLevelPressure, 1500, head)).toBeCloseTo(seaLevelPressure - 1500 - head, 9);
    expect(problemOf(drivingPressure(seaLevelPressure, 1500, valueOf(headOf(1100, 10))))).toMatch(/rise higher/);
    expect(problemOf(drivingPressure(90_000, 90_000))).toMatch(/nothing drives/);
  });
});

describe('a leak test', () => {
  it('compares rates, whatever the time', () => {
    const limit = { rise: 5 * mbar, time: 600 };
    expect(leakOfLimit({ rise: 3 * mbar, time: 600 }, limit)).toBeCloseTo(0.6, 12);
    expect(leakOfLimit({ rise: 3 * mbar, time: 300 }, limit)).toBeCloseTo(1.2, 12);
    expect(mbarPerMinute(valueOf(leakRate(limit.rise, limit.time)))).toBeCloseTo(0.5, 12);
    expect(problemOf(leakRate(5, 0))).toMatch(/time/);
  });

  it('hunted down by hand, valve by valve: in the bag, not in pot and line, and closed', () => {
    const limit = { rise: 5 * mbar, time: 600 };
    // gauge in mbar when the pump is shut off, after 5 and after 10 min
    const halves = (start: number, half: number, end: number) => [
      { rise: (half - start) * mbar, time: 300 },
      { rise: (end - half) * mbar, time: 300 },
    ];
    const perMinute = (readings: readonly { readonly rise: number; readonly time: number }[]) =>
      readings.map(({ rise, time }) => mbarPerMinute(valueOf(leakRate(rise, time))));
    // bag open to the pot, 22 25 28: 3 mbar in each 5 min are 0.6 mbar/min, a fifth over 0.5; both halves alike is a hole
    const whole = halves(22, 25, 28);
    for (const rate of perMinute(whole)) expect(rate).toBeCloseTo(0.6, 12);
    for (const half of whole) expect(leakOfLimit(half, limit)).toBeCloseTo(1.2, 12);
    // line clamped at the bag, 22 22.5 23: pot and line alone leak 0.1 mbar/min, a fifth of the limit: it is the bag
    const pot = halves(22, 22.5, 23);
    for (const half of pot) expect(leakOfLimit(half, limit)).toBeCloseTo(0.2, 12);
    // a pleat pressed down, 22 23.5 24: what gives way or gives off gas is done in the first half (0.3, then 0.1 mbar/min)
    const closed = halves(22, 23.5, 24);
    expect(perMinute(closed)).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0.1, 12)]);
    expect(leakOfLimit({ rise: 2 * mbar, time: 600 }, limit)).toBeCloseTo(0.4, 12);
  });

  it('takes an hour and forty minutes on a gauge of 50 mbar for a limit of 5 mbar in 10 min', () => {
    expect(shortestTest({ rise: 5 * mbar, time: 600 }, 50 * mbar)).toBeCloseTo(6000, 9);
  });
});

describe('the force on a bag', () => {
  it('of 900 mbar is 9 t on each square metre', () => {
    const force = valueOf(bagForce(seaLevelPressure - 90_000, seaLevelPressure, 1));
    expectWithin(force.mass, 9177, 1e-3);
    expectWithin(force.force, 90_000, 1e-9);
    expect(problemOf(bagForce(2e5, seaLevelPressure, 1))).toMatch(/more than that of the air/);
  });
});
