/** Layers on one another along the section line: areas, heights and what is left beside others. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  flatFrom,
  heightAt,
  laidOn,
  levelled,
  type Stretch,
  topOf,
  without,
} from '../../../calc/drawing/section/profile.ts';
import { stretchesOf } from '../../../calc/drawing/section/stretches.ts';
import { signedArea } from '../../../calc/outline/polygon.ts';

const stretch = fc
  .tuple(fc.double({ min: -0.5, max: 0.4, noNaN: true }), fc.double({ min: 0.01, max: 0.5, noNaN: true }))
  .map(([from, length]): Stretch => [from, Math.min(0.5, from + length)]);
const layer = fc.record({ stretch, thickness: fc.double({ min: 1e-4, max: 0.03, noNaN: true }) });
const floor = flatFrom(-0.5, 0.5);

describe('layers on one another', () => {
  it('keep their area whatever they lie on: width times thickness', () => {
    fc.assert(
      fc.property(fc.array(layer, { maxLength: 12 }), (layers) => {
        let profile = floor;
        for (const { stretch: on, thickness } of layers) {
          const laid = laidOn(profile, on, thickness);
          expect(signedArea(laid.shape)).toBeCloseTo((on[1] - on[0]) * thickness, 9);
          profile = laid.profile;
        }
      }),
    );
  });

  it('stand as high at each place as all that lies there', () => {
    fc.assert(
      fc.property(
        fc.array(layer, { maxLength: 12 }),
        fc.double({ min: -0.49, max: 0.49, noNaN: true }),
        (layers, x) => {
          fc.pre(layers.every(({ stretch: [from, to] }) => Math.abs(x - from) > 1e-6 && Math.abs(x - to) > 1e-6));
          const profile = layers.reduce((at, { stretch: on, thickness }) => laidOn(at, on, thickness).profile, floor);
          const there = layers.filter(({ stretch: [from, to] }) => from < x && x < to);
          const height = there.reduce((sum, { thickness }) => sum + thickness, 0);
          expect(heightAt(profile, x)).toBeCloseTo(height, 9);
          expect(topOf(profile)).toBeGreaterThanOrEqual(height - 1e-9);
        },
      ),
    );
  });

  it('rise over a sloped edge: a trapezium, level in between', () => {
    const { profile, shape } = laidOn(floor, [-0.3, 0.3], 0.02, 0.05);
    expect(signedArea(shape)).toBeCloseTo(0.02 * (0.6 - 0.05), 12);
    expect([-0.3, -0.275, -0.25, 0, 0.275].map((x) => heightAt(profile, x))).toEqual(
      [0, 0.01, 0.02, 0.02, 0.01].map((z) => expect.closeTo(z, 9)),
    );
    const over = laidOn(profile, [-0.5, 0.5], 0.001);
    expect(heightAt(over.profile, -0.275)).toBeCloseTo(0.011, 9);
    expect(signedArea(over.shape)).toBeCloseTo(0.001, 9);
  });

  it('are filled up to a level where it is asked for', () => {
    const { profile } = laidOn(floor, [0, 0.1], 0.01);
    const level = levelled(profile, [-0.1, 0.05], 0.004);
    expect([-0.2, -0.05, 0.02, 0.08].map((x) => heightAt(level, x))).toEqual([0, 0.004, 0.01, 0.01]);
  });
});

it('what is left of a stretch beside others has their widths taken off, and meets none of them', () => {
  const whole: Stretch = [-0.5, 0.5];
  fc.assert(
    fc.property(fc.array(stretch, { maxLength: 6 }), (others) => {
      const left = without(whole, others);
      for (const [from, to] of left) {
        expect(to).toBeGreaterThan(from);
        const middle = (from + to) / 2;
        expect(others.some(([a, b]) => a < middle && middle < b)).toBe(false);
      }
      const marks = [...new Set([-0.5, 0.5, ...others.flat()])].sort((a, b) => a - b);
      const free = marks.slice(1).reduce((sum, to, i) => {
        const from = marks[i] ?? to;
        const middle = (from + to) / 2;
        return others.some(([a, b]) => a < middle && middle < b) ? sum : sum + to - from;
      }, 0);
      expect(left.reduce((sum, [from, to]) => sum + to - from, 0)).toBeCloseTo(free, 6);
    }),
  );
});

it('the middle line runs inside of a ring twice, and inside of a circle over its diameter', () => {
  const circle = (radius: number, middle = 0) => [
    { x: middle + radius, y: 0, bulge: 1 },
    { x: middle - radius, y: 0, bulge: 1 },
  ];
  const [over] = stretchesOf([circle(0.2, 0.1)]);
  expect(over).toEqual([expect.closeTo(-0.1, 4), expect.closeTo(0.3, 4)]);
  const ring = stretchesOf([circle(0.3), circle(0.1)]).flat();
  expect(ring).toEqual([-0.3, -0.1, 0.1, 0.3].map((x) => expect.closeTo(x, 4)));
  expect(stretchesOf([circle(0.1).map(({ x, y, bulge }) => ({ x, y: y + 0.5, bulge }))])).toEqual([]);
});
