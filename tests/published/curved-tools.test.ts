/** Curved tools against closed forms: cylinders rolled out flat, caps of spheres, bent sheets. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeMoment, halfWidth, leftOver, shearAngle, thinned } from '../../calc/curve/drape.ts';
import {
  closedCutRadius,
  cutMovement,
  cutOpening,
  gaussCurvature,
  leastBendRadius,
  stretchAt,
} from '../../calc/curve/surface.ts';
import { contourArea, contourPerimeter } from '../../calc/outline/contour-measure.ts';
import { contourOf } from '../../calc/outline/contour-of.ts';
import { offsetArea } from '../../calc/outline/offset.ts';
import type { Shape } from '../../calc/outline/shape.ts';
import { scaled, transformed } from '../../calc/outline/transform.ts';
import { expectWithin, problemOf, valueOf } from '../calc/outcomes.ts';
import { convexShape } from '../calc/outline/shapes.ts';

const radius = fc.double({ min: 0.2, max: 5, noNaN: true });
const height = fc.double({ min: 0, max: 0.05, noNaN: true });
const excessOf = (curvature: number, shape: Shape, widest: number) =>
  curvature * valueOf(edgeMoment((inset) => offsetArea(shape, -inset), widest));

describe('a ply on a cylinder', () => {
  // the arc over a chord c on a radius R is 2 R asin(c / (2 R)); a layer h further in sees the same angle on R - h
  it('is as long as the arc at its own radius over the same angle', () => {
    fc.assert(
      fc.property(radius, height, fc.double({ min: 0.05, max: 1, noNaN: true }), (r, h, share) => {
        const chord = 2 * r * Math.sin(share / 2);
        const onFace = 2 * r * Math.asin(chord / (2 * r));
        const hollow = valueOf(stretchAt({ along: 1 / r, across: 0 }, h));
        const crowned = valueOf(stretchAt({ along: -1 / r, across: 0 }, h));
        expectWithin(onFace * hollow.along, 2 * (r - h) * Math.asin(chord / (2 * r)), 1e-12);
        expectWithin(onFace * crowned.along, 2 * (r + h) * Math.asin(chord / (2 * r)), 1e-12);
        expect([hollow.across, crowned.across]).toEqual([1, 1]);
      }),
    );
  });

  it('rolls out flat: an ellipse has the area and the way round of the one that is drawn longer', () => {
    const disc = valueOf(contourOf({ kind: 'circle', diameter: 0.6 }));
    const { along, across } = valueOf(stretchAt({ along: -1 / 0.35, across: 0 }, 0.021));
    const rolled = transformed(disc, scaled(along, across));
    expectWithin(contourArea(rolled), Math.PI * 0.3 * 0.3 * 1.06, 1e-6);
    // perimeter of an ellipse: S. Ramanujan 1914, good to 1e-10 for one that is nearly round
    const [a, b] = [0.318, 0.3];
    const round = Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b)));
    expectWithin(contourPerimeter(rolled), round, 1e-6);
  });

  it('is flat again as the radius grows without end', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e6, max: 1e12, noNaN: true }), height, convexShape, (r, h, shape) => {
        const { along, across } = valueOf(stretchAt({ along: 1 / r, across: -1 / r }, h));
        expect(Math.max(Math.abs(along - 1), Math.abs(across - 1))).toBeLessThanOrEqual(1.0001 * (0.05 / r) + 1e-15);
        const line = valueOf(contourOf(shape));
        expect(excessOf(gaussCurvature({ along: 1 / r, across: 1 / r }), shape, halfWidth(line))).toBeLessThan(1e-9);
        expect(valueOf(cutOpening(0.02, r))).toBeLessThan(1e-9);
      }),
    );
  });

  it('cannot lie in a hollow tighter than it is high', () => {
    expect(problemOf(stretchAt({ along: 50, across: 0 }, 0.02))).toMatch(/smaller radius/);
  });
});

describe('cloth on a face curved both ways', () => {
  // a sphere: the circle of radius r on it is 2 pi R sin(r / R) long; J. Bertrand, C. F. Diguet, V. Puiseux 1848
  it('has the excess of a cap of a sphere, 2 pi (r - R sin(r / R)), to the first order', () => {
    for (const share of [0.02, 0.1, 0.2, 0.4]) {
      const [R, r] = [1.5, 1.5 * share];
      const exact = 2 * Math.PI * (r - R * Math.sin(r / R));
      const found = excessOf(1 / (R * R), { kind: 'circle', diameter: 2 * r }, r);
      expectWithin(found, (Math.PI * r ** 3) / (3 * R * R), 1e-9);
      // the next term of the sine: (r / R)2 / 20
      expectWithin(found, exact, (share * share) / 19);
    }
  });

  // the flat disc of the same reach has more area than the cap 2 pi R h, and its edge more length: d(area) = excess dr
  it('adds up to the area that the flat disc has more than the cap, 2 pi R h', () => {
    const [R, r, steps] = [2, 0.3, 400];
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const at = ((i + 0.5) * r) / steps;
      sum += (excessOf(1 / (R * R), { kind: 'circle', diameter: 2 * at }, at) * r) / steps;
    }
    const cap = 2 * Math.PI * R * (R * (1 - Math.cos(r / R)));
    expectWithin(sum, Math.PI * r * r - cap, (r / R) ** 2 / 20);
  });

  // a band of half width w along a great circle: each edge is L cos(w / R) long
  it('has the excess of a band round a sphere, and as much too little on a saddle', () => {
    const [R, length, w] = [3, 4, 0.15];
    const band: Shape = { kind: 'rectangle', length, width: 2 * w };
    const found = excessOf(1 / (R * R), band, w);
    // what the ends of the band take off is (2 w) / (3 length) of it
    expectWithin(found, 2 * length * (1 - Math.cos(w / R)) * (1 - (2 * w) / (3 * length)), 1e-3);
    expectWithin(excessOf(-1 / (R * R), band, w), -found, 1e-12);
    expect(excessOf(0, band, w)).toBe(0);
  });

  // J. Hazzidakis 1879: in a net of equal meshes the curvature inside a four-sided part is 2 pi less its outer angles; with the two
  // crossing fibres at right angles on their whole length the fourth corner is off the square by K times the area
  it('shears by the curvature times the area between two crossing fibres and the corner', () => {
    const sheet = valueOf(contourOf({ kind: 'rectangle', length: 0.8, width: 0.5 }));
    expectWithin(valueOf(shearAngle(1 / (0.9 * 0.7), sheet, 0)), (0.4 * 0.25) / (0.9 * 0.7), 1e-9);
    expectWithin(valueOf(shearAngle(-1 / (0.9 * 0.7), sheet, Math.PI / 2)), (0.4 * 0.25) / (0.9 * 0.7), 1e-9);
    // fibres on the diagonals of a square meet its corners: the middle of a side is furthest from both
    const square = valueOf(contourOf({ kind: 'rectangle', length: 0.6, width: 0.6 }));
    expectWithin(valueOf(shearAngle(1, square, Math.PI / 4)), 0.3 * 0.3 * 0.5, 1e-9);
  });

  it('of an outline of many points is that of the outline with fewer', () => {
    const round = Array.from({ length: 3000 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 3000;
      return { x: 0.3 * Math.cos(angle), y: 0.3 * Math.sin(angle) };
    });
    const line = thinned(round);
    expect(line.length).toBeLessThan(200);
    const moment = edgeMoment((inset) => offsetArea({ kind: 'polygon', points: line }, -inset), halfWidth(line));
    expectWithin(valueOf(moment), (Math.PI * 0.3 ** 3) / 3, 4e-3);
    expectWithin(contourArea(line), Math.PI * 0.09, 2e-3);
  });

  it('keeps the share of the excess for which the cloth does not shear', () => {
    expect(valueOf(leftOver(0.04, 0.5, 0.6))).toBe(0);
    expectWithin(valueOf(leftOver(0.04, 0.8, 0.6)), 0.01, 1e-12);
  });
});

describe('a bent sheet', () => {
  // pure bending: the strain of its faces is t / (2 R) (any text on the strength of materials; Gere and Timoshenko, chapter 5)
  it('of another thickness bends to the radius with the same strain', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.003, max: 0.05, noNaN: true }),
        fc.double({ min: 0.003, max: 0.05, noNaN: true }),
        radius,
        (thickness, at, r) => {
          const least = valueOf(leastBendRadius(thickness, { radius: r, at }));
          expectWithin(thickness / (2 * least), at / (2 * r), 1e-12);
        },
      ),
    );
  });

  // n cuts every p on an arc of n p: their bottoms keep n p, their mouths lie on R + d or R - d
  it('opens or closes its cuts by what the mouths have more or less arc', () => {
    const [pitch, depth, R, n] = [0.03, 0.019, 0.6, 20];
    const more = (n * pitch * (R + depth)) / R - n * pitch;
    expectWithin(valueOf(cutMovement({ pitch, depth, radius: R })), more / n, 1e-12);
    // a wedge each, over what one cut has to itself
    expectWithin(valueOf(cutOpening(depth, R)), ((more / n) * depth) / 2 / pitch, 1e-12);
    const closed = valueOf(closedCutRadius({ pitch, depth, width: 0.001 }));
    expectWithin(valueOf(cutMovement({ pitch, depth, radius: closed })), 0.001, 1e-12);
  });
});
