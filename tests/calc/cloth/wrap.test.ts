import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EdgeForm, landingOf, wrapReach } from '../../../calc/cloth/wrap.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const round = (radius: number): EdgeForm => ({ kind: 'round', radius });
const square: EdgeForm = { kind: 'square' };

/**
 * Length of the mid-surface past the outline, walked in small steps round an edge whose corners are drawn as points.
 */
function walked(height: number, thickness: number, r1: number, r2: number, landing: number): number {
  const [a, b] = [r1 + thickness / 2, r2 + thickness / 2];
  const h = height + thickness;
  const points: [number, number][] = [[-a, 0]];
  for (let i = 0; i <= 2000; i++) {
    const t = -Math.PI / 2 + (i / 2000) * (Math.PI / 2);
    points.push([-a + a * Math.cos(t), a + a * Math.sin(t)]);
  }
  for (let i = 0; i <= 2000; i++) {
    const t = (i / 2000) * (Math.PI / 2);
    points.push([-b + b * Math.cos(t), h - b + b * Math.sin(t)]);
  }
  points.push([-landing, h]);
  const way = points.reduce((sum, [x, y], i) => {
    const [px, py] = points[i - 1] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);
  return way - a;
}

describe('the reach of a wrapped ply', () => {
  it('is 38.4 mm for 20 mm of core, a ply of 0.51 mm, radii of 8 mm and a landing of 25 mm', () => {
    const edge = { height: 0.02, thickness: 0.00051, toolSide: round(0.008), landingSide: round(0.008) };
    expect(valueOf(wrapReach(edge, 0.025))).toBeCloseTo(0.0384, 4);
  });

  it('is the length of the mid-surface, walked step by step', () => {
    const radius = fc.double({ min: 0, max: 0.01, noNaN: true });
    const thickness = fc.double({ min: 1e-4, max: 2e-3, noNaN: true });
    fc.assert(
      fc.property(radius, radius, thickness, (r1, r2, t) => {
        const edge = { height: 0.02, thickness: t, toolSide: round(r1), landingSide: round(r2) };
        expectWithin(valueOf(wrapReach(edge, 0.05)), walked(0.02, t, r1, r2, 0.05), 1e-6);
      }),
    );
  });

  it('lands by what it was asked to', () => {
    const edge = { height: 0.02, thickness: 0.0005, toolSide: round(0.008), landingSide: square };
    expectWithin(valueOf(landingOf(edge, valueOf(wrapReach(edge, 0.025)))), 0.025, 1e-12);
    expect(valueOf(landingOf(edge, 0.01))).toBeLessThan(0);
  });

  it('is shorter over a chamfer by its two legs less its slope', () => {
    const plain = { height: 0.02, thickness: 0.0005, toolSide: square, landingSide: square };
    const chamfered = { ...plain, landingSide: { kind: 'chamfer', across: 0.004, down: 0.003 } as const };
    expectWithin(valueOf(wrapReach(plain, 0.025)) - valueOf(wrapReach(chamfered, 0.025)), 0.002, 1e-9);
  });

  it('is none where there is no edge, or more radius than edge', () => {
    const edge = { height: 0, thickness: 0.0005, toolSide: square, landingSide: square };
    expect(problemOf(wrapReach(edge, 0.025))).toMatch(/height of the edge/);
    const tight = { height: 0.01, thickness: 0.0005, toolSide: round(0.008), landingSide: round(0.008) };
    expect(problemOf(wrapReach(tight, 0.025))).toMatch(/more than it is high/);
    expect(problemOf(wrapReach({ ...tight, height: 0.02 }, -0.001))).toMatch(/landing/);
  });
});
