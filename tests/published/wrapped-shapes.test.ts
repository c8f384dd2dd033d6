/** Wraps, their flat pieces and their excess of cloth against published formulas. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dartNeeds } from '../../calc/cloth/darts.ts';
import { wrapReach } from '../../calc/cloth/wrap.ts';
import type { Contour } from '../../calc/outline/contour.ts';
import { contourArea, contourPerimeter } from '../../calc/outline/contour-measure.ts';
import { contourOf } from '../../calc/outline/contour-of.ts';
import { areaOf, offsetContour } from '../../calc/outline/contour-offset.ts';
import { edgeTurns } from '../../calc/piece/edge-turns.ts';
import { expectWithin, valueOf } from '../calc/outcomes.ts';
import { convexShape, star } from '../calc/outline/shapes.ts';

const metres = fc.double({ min: 0.005, max: 0.2, noNaN: true });
const outline = fc.oneof(convexShape, star).map((shape): Contour => valueOf(contourOf(shape)));

describe('excess of cloth round a closed outline', () => {
  // Gauss and Bonnet: the turns of a simple closed curve in the plane add up to 2 pi (Hopf's Umlaufsatz 1935)
  it('is 2 pi (reach + landing), inward bends counted against it', () => {
    fc.assert(
      fc.property(outline, metres, metres, (line, reach, landing) => {
        const habit = { shear: 0.3, widest: 0.02, keepOff: reach / 2, least: 0.002, tongue: 0.01 };
        const bends = valueOf(dartNeeds(edgeTurns(line), { reach, landing }, habit));
        const total = bends.reduce((sum, { excess }) => sum + excess, 0);
        expectWithin(total, 2 * Math.PI * (reach + landing), 1e-9);
      }),
    );
  });

  it('is, round a disc and a capsule, the free edge while flat less the line on which it lands', () => {
    const [reach, landing] = [0.0384, 0.025];
    for (const shape of [
      { kind: 'circle', diameter: 0.6 } as const,
      { kind: 'capsule', length: 1.2, width: 0.3 } as const,
    ]) {
      const line = valueOf(contourOf(shape));
      const flat = contourPerimeter(valueOf(offsetContour(line, reach))[0]!);
      const landed = contourPerimeter(valueOf(offsetContour(line, -landing))[0]!);
      expectWithin(flat - landed, 2 * Math.PI * (reach + landing), 1e-9);
    }
  });
});

describe('the flat piece of a wrapped ply', () => {
  // Steiner 1840, "Ueber parallele Flaechen": A(d) = A + P d + pi d^2 and P(d) = P + 2 pi d of a convex outline
  it('has the area and the edge of the parallel line, by the formula of Steiner', () => {
    const convex = convexShape.map((shape): Contour => valueOf(contourOf(shape)));
    fc.assert(
      fc.property(convex, metres, (line, reach) => {
        const cut = valueOf(offsetContour(line, reach));
        const [area, round] = [contourArea(line), contourPerimeter(line)];
        expectWithin(areaOf(cut), area + round * reach + Math.PI * reach * reach, 1e-6);
        expectWithin(contourPerimeter(cut[0]!), round + 2 * Math.PI * reach, 1e-6);
      }),
    );
  });
});

describe('developed length over an edge', () => {
  /*
   * Bend allowance of sheet metal: BA = A (R + K t), A in rad, R the inside radius, t the thickness, K the place of the neutral line
   * (Machinery's Handbook, 26th edition, "Bending sheet metal"; formula from memory). For a cloth that neither stretches nor
   * shrinks on its middle, K is 0.5: the flat piece is flange + BA + web + BA + flange.
   */
  const bendAllowance = (angle: number, radius: number, thickness: number, k = 0.5) => angle * (radius + k * thickness);

  it('is the bend allowance at both radii and the straights between', () => {
    const radius = fc.double({ min: 0, max: 0.009, noNaN: true });
    const thickness = fc.double({ min: 1e-4, max: 3e-3, noNaN: true });
    fc.assert(
      fc.property(radius, radius, thickness, metres, (r1, r2, t, landing) => {
        const height = 0.02;
        fc.pre(landing > r2 + t);
        // told on the middle of the cloth, as the outline and the landing are: a bend takes r + t / 2 of each of its sides
        const web = height + t - (r1 + t / 2) - (r2 + t / 2);
        const flat =
          bendAllowance(Math.PI / 2, r1, t) + web + bendAllowance(Math.PI / 2, r2, t) + (landing - r2 - t / 2);
        const form = (radius: number) => ({ kind: 'round', radius }) as const;
        const reach = valueOf(wrapReach({ height, thickness: t, toolSide: form(r1), landingSide: form(r2) }, landing));
        expect(reach).toBeCloseTo(flat - (r1 + t / 2), 12);
      }),
    );
  });

  it('runs 25 to 40 mm past the outline on common boards', () => {
    // common practice: 25 to 40 mm of oversize round a board with 20 mm of core and a landing of 10 to 25 mm
    for (const landing of [0.012, 0.025]) {
      const edge = { kind: 'round', radius: 0.008 } as const;
      const reach = valueOf(wrapReach({ height: 0.02, thickness: 0.0005, toolSide: edge, landingSide: edge }, landing));
      expect(reach).toBeGreaterThanOrEqual(0.025);
      expect(reach).toBeLessThanOrEqual(0.04);
    }
  });
});
