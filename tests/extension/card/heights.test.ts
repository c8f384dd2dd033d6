/** Heights of the bands of a stack. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandHeights, labelPlaces } from '../../../extension/card/webview/heights.ts';

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);

describe('heights', () => {
  it('are as the thicknesses, where every band can be seen', () => {
    const { heights, toScale } = bandHeights([0.001, 0.002, 0.007], 100, 5);
    expect(toScale).toBe(true);
    expect(heights).toEqual([10, 20, 70].map((height) => expect.closeTo(height, 9)));
  });

  it('a thin layer is drawn as high as is needed to see it, and that is said', () => {
    const { heights, toScale } = bandHeights([0.0001, 0.01, 0.01], 106, 6);
    expect(toScale).toBe(false);
    expect(heights).toEqual([6, 50, 50].map((height) => expect.closeTo(height, 9)));
  });

  it('are never below the least, keep their order, and need no more room than there is where it is enough', () => {
    const thicknesses = fc.array(fc.option(fc.double({ min: 0, max: 0.1, noNaN: true }), { nil: undefined }), {
      minLength: 1,
      maxLength: 60,
    });
    fc.assert(
      fc.property(thicknesses, (list) => {
        const { heights } = bandHeights(list, 300, 6);
        expect(Math.min(...heights)).toBeGreaterThanOrEqual(6 - 1e-9);
        expect(sum(heights)).toBeLessThanOrEqual(Math.max(300, list.length * 6) + 1e-6);
        for (const [i, one] of list.entries())
          for (const [j, other] of list.entries())
            if ((one ?? 0) > (other ?? 0)) expect(heights[i]).toBeGreaterThanOrEqual((heights[j] ?? 0) - 1e-9);
      }),
    );
  });
});

describe('labels', () => {
  it('stand apart, in order, and inside the drawing where there is room', () => {
    const middles = fc
      .array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 40 })
      .map((list) => list.sort((a, b) => a - b));
    fc.assert(
      fc.property(middles, (list) => {
        const places = labelPlaces(list, 15, 300);
        for (let i = 1; i < places.length; i++) {
          expect((places[i] as number) - (places[i - 1] as number)).toBeGreaterThanOrEqual(15 - 1e-9);
        }
        if (list.length * 15 <= 300) expect(places.at(-1)).toBeLessThanOrEqual(300 - 7.5 + 1e-9);
      }),
    );
  });

  it('stay beside their bands where these are far apart', () => {
    expect(labelPlaces([20, 100, 200], 15, 300)).toEqual([20, 100, 200]);
  });
});
