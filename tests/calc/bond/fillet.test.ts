import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filletSection } from '../../../calc/bond/fillet.ts';
import { isImpossible } from '../../../calc/outcome.ts';

/** The area between two faces and the hollow that touches both, strip by strip along the line that halves the angle. */
function byStrips(radius: number, angle: number): number {
  const half = angle / 2;
  const middle = radius / Math.sin(half);
  const far = (radius / Math.tan(half)) * Math.cos(half);
  const strips = 20_000;
  let area = 0;
  for (let i = 0; i < strips; i++) {
    const x = (far * (i + 0.5)) / strips;
    const face = x * Math.tan(half);
    const deep = radius ** 2 - (x - middle) ** 2;
    area += 2 * Math.max(0, face - (deep > 0 ? Math.sqrt(deep) : 0)) * (far / strips);
  }
  return area;
}

describe('section of a fillet', () => {
  it('at a right angle is r^2 (1 - pi / 4)', () => {
    expect(filletSection(0.01, Math.PI / 2)).toBeCloseTo(1e-4 * (1 - Math.PI / 4), 12);
  });

  it('at any angle is what lies between the faces and the hollow', () => {
    fc.assert(
      fc.property(fc.double({ min: 30, max: 150, noNaN: true }), (degrees) => {
        const angle = (degrees * Math.PI) / 180;
        const section = filletSection(0.012, angle);
        expect(isImpossible(section) ? Number.NaN : section / byStrips(0.012, angle)).toBeCloseTo(1, 3);
      }),
      { numRuns: 20 },
    );
  });

  it.each([
    [0, 1],
    [0.01, 0],
    [0.01, Math.PI],
  ])('of %s m at %s rad there is none', (radius, angle) =>
    expect(filletSection(radius, angle)).toHaveProperty('problem'),
  );
});
