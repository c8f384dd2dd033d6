import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equivalentTime, hottest } from '../../../calc/cure/equivalent.ts';

const hour = 3600;
const at = (celsius: number): number => celsius + 273.15;

/* The rule of the resin makers: every 10 K halves the time. Numbers below follow from it by hand. */
describe('the time at one temperature that cures as far as a schedule', () => {
  it('is the time itself at that temperature', () => {
    expect(equivalentTime([{ from: at(23), to: at(23), time: 6 * hour }], at(23))).toBeCloseTo(6 * hour, 6);
  });

  it('doubles for each 10 K more', () => {
    expect(equivalentTime([{ from: at(43), to: at(43), time: hour }], at(23))).toBeCloseTo(4 * hour, 6);
  });

  it('on a ramp is what many short holds come to', () => {
    const steps = 20000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += (hour / steps) * 2 ** ((20 + (80 * (i + 0.5)) / steps - 100) / 10);
    expect(equivalentTime([{ from: at(20), to: at(100), time: hour }], at(100))).toBeCloseTo(sum, 2);
  });

  it('says why it cannot be told', () => {
    expect(equivalentTime([{ from: at(20), to: at(20), time: -1 }], at(20))).toHaveProperty('problem');
    expect(equivalentTime([], 0)).toHaveProperty('problem');
  });

  const temperature = fc.double({ min: 250, max: 500, noNaN: true });
  const span = fc.record({ from: temperature, to: temperature, time: fc.double({ min: 0, max: 1e6, noNaN: true }) });

  it('adds up, lies between the ends of a ramp, and runs the same way up and down', () => {
    fc.assert(
      fc.property(span, span, (a, b) => {
        const [one, two, both] = [[a], [b], [a, b]].map((spans) => equivalentTime(spans, 350)) as [
          number,
          number,
          number,
        ];
        expect(both).toBeCloseTo(one + two, 4);
        const [cool, warm] = [Math.min(a.from, a.to), Math.max(a.from, a.to)].map((t) =>
          equivalentTime([{ from: t, to: t, time: a.time }], 350),
        ) as [number, number];
        expect(one).toBeGreaterThanOrEqual(cool * (1 - 1e-6) - 1e-9);
        expect(one).toBeLessThanOrEqual(warm * (1 + 1e-6) + 1e-9);
        const back = equivalentTime([{ from: a.to, to: a.from, time: a.time }], 350) as number;
        expect(Math.abs(back - one)).toBeLessThanOrEqual(1e-6 * Math.max(1, one));
      }),
    );
  });

  it('knows the hottest', () => {
    expect(hottest([])).toBeUndefined();
    expect(
      hottest([
        { from: 300, to: 390, time: 1 },
        { from: 390, to: 320, time: 1 },
      ]),
    ).toBe(390);
  });
});
