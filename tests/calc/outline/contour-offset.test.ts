import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clippedContours, clippedOffset, isHole } from '../../../calc/outline/clip.ts';
import type { Contour } from '../../../calc/outline/contour.ts';
import { contourDistance } from '../../../calc/outline/contour-distance.ts';
import { contourFault } from '../../../calc/outline/contour-fault.ts';
import { contourArea, contourPerimeter, tidiedContour } from '../../../calc/outline/contour-measure.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import { areaOf, offsetContour } from '../../../calc/outline/contour-offset.ts';
import { shapeArea, shapeBounds } from '../../../calc/outline/measure.ts';
import { offsetArea } from '../../../calc/outline/offset.ts';
import { plainForm } from '../../../calc/outline/plain.ts';
import type { Shape } from '../../../calc/outline/shape.ts';
import { moved, transformed } from '../../../calc/outline/transform.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';
import { bulged, convexShape, ell, star } from './shapes.ts';

const arcs = (contour: Contour) => contour.filter((v) => (v.bulge ?? 0) !== 0).length;
const sled = valueOf(contourOf({ kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 }));

/** Two discs of 0.2 m, 0.4 m apart, with a neck 40 mm wide between them. */
const dumbBell: Contour = (() => {
  const reach = Math.sqrt(0.1 ** 2 - 0.02 ** 2);
  const sweep = 2 * Math.PI - 2 * Math.atan2(0.02, reach);
  const bulge = Math.tan(sweep / 4);
  return [
    { x: 0.2 - reach, y: -0.02, bulge },
    { x: 0.2 - reach, y: 0.02 },
    { x: -0.2 + reach, y: 0.02, bulge },
    { x: -0.2 + reach, y: -0.02 },
  ];
})();

describe('an offset line', () => {
  it('has the area and the length of Steiner 1840 outwards of convex outlines, in true straights and arcs', () => {
    fc.assert(
      fc.property(convexShape, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (shape, by) => {
        const contour = valueOf(contourOf(shape));
        const [found, ...more] = valueOf(offsetContour(contour, by));
        expect(more).toEqual([]);
        if (found === undefined) throw new Error('no line');
        expectWithin(
          contourArea(found),
          contourArea(contour) + contourPerimeter(contour) * by + Math.PI * by * by,
          1e-6,
        );
        expectWithin(contourPerimeter(found), contourPerimeter(contour) + 2 * Math.PI * by, 1e-6);
      }),
    );
  });

  it('keeps its arcs where nothing but corners is trimmed', () => {
    const out = valueOf(offsetContour(sled, 0.0384))[0] ?? [];
    expect(arcs(out)).toBe(4);
    expectWithin(contourArea(out), 1.2568 * 0.4968 - (4 - Math.PI) * 0.1784 ** 2, 1e-12);
    const inwards = valueOf(offsetContour(sled, -0.04))[0] ?? [];
    expectWithin(contourArea(inwards), 1.1 * 0.34 - (4 - Math.PI) * 0.01, 1e-12);
    const limb = valueOf(offsetContour(valueOf(contourOf(ell)), -0.05));
    // The L drawn in by 50 mm: its inside corner becomes an arc of 50 mm about itself.
    expect(limb.length).toBe(1);
    expectWithin(areaOf(limb), 0.9 * 0.3 + 0.3 * 0.6 + (1 - Math.PI / 4) * 0.05 ** 2, 1e-12);
  });

  it('falls into pieces at a neck and closes a bay', () => {
    const pieces = valueOf(offsetContour(dumbBell, -0.03));
    expect(pieces.length).toBe(2);
    for (const piece of pieces) expectWithin(contourArea(piece), Math.PI * 0.07 ** 2, 5e-3);
    expect(valueOf(offsetContour(dumbBell, -0.11))).toEqual([]);
    const frame = valueOf(
      contourOf({
        kind: 'polygon',
        points: [
          [0, 0],
          [1, 0],
          [1, 0.45],
          [0.9, 0.45],
          [0.9, 0.1],
          [0.1, 0.1],
          [0.1, 0.9],
          [0.9, 0.9],
          [0.9, 0.55],
          [1, 0.55],
          [1, 1],
          [0, 1],
        ].map(([x = 0, y = 0]) => ({ x, y })),
      }),
    );
    const closed = valueOf(offsetContour(frame, 0.06));
    expect(closed.filter(isHole).length).toBe(1);
    expect(closed.length).toBe(2);
  });

  it('runs everywhere as far off as asked, in and out, whatever the outline', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), fc.double({ min: -0.3, max: 0.3, noNaN: true }), (shape, by) => {
        const contour = valueOf(contourOf(shape));
        const found = valueOf(offsetContour(contour, by));
        for (const piece of found)
          for (const p of piece) expect(Math.abs(contourDistance(contour, p) - by)).toBeLessThan(0.03e-3);
        if (by > 0) expect(found.length).toBeGreaterThan(0);
        expect(areaOf(found) - contourArea(contour)).toBeGreaterThan(by < 0 ? -contourArea(contour) - 1e-12 : -1e-12);
      }),
    );
  });

  it('gives the same area as the closed forms of the same outline', () => {
    fc.assert(
      fc.property(convexShape, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (shape, share) => {
        const { length, width } = valueOf(shapeBounds(shape));
        const by = (-share * Math.min(length, width)) / 2;
        const contour: Shape = { kind: 'contour', vertices: valueOf(contourOf(shape)) };
        const off = valueOf(offsetArea(contour, by)) - valueOf(offsetArea(shape, by));
        expect(Math.abs(off)).toBeLessThan(1e-4 * valueOf(shapeArea(shape)) + 1e-5 * (length + width));
      }),
    );
  });

  it('of straights and arcs has the area of the one that is found on chords of them by a library', () => {
    fc.assert(
      fc.property(bulged, fc.double({ min: -0.15, max: 0.2, noNaN: true }), (line, by) => {
        const contour = tidiedContour(line);
        fc.pre(contourFault(contour) === undefined && Math.abs(by) > 1e-3);
        const [mine, its] = [
          areaOf(valueOf(offsetContour(contour, by))),
          areaOf(valueOf(clippedOffset([contour], by))),
        ];
        // Chords leave their arcs by 5 um.
        expect(Math.abs(mine - its)).toBeLessThan(2e-5 * (contourPerimeter(contour) + 7 * Math.abs(by)));
      }),
    );
  });

  it('is refused where it cannot be told', () => {
    expect(problemOf(offsetContour(sled, Number.NaN))).toBeDefined();
    expect(problemOf(clippedContours('union', [transformed(sled, moved(2e4, 0))]))).toBeDefined();
    expect(valueOf(clippedContours('union', []))).toEqual([]);
    expect(valueOf(clippedContours('difference', [[]], [sled]))).toEqual([]);
  });
});

describe('clipped contours', () => {
  const circle = valueOf(contourOf({ kind: 'circle', diameter: 0.2 }));
  it('join, cut and share as areas do', () => {
    const aside = transformed(circle, moved(0.1, 0));
    // Source: the lens of two circles, 2 r^2 acos(d / 2r) - d / 2 sqrt(4 r^2 - d^2).
    const lens = 2 * 0.01 * Math.acos(0.5) - 0.05 * Math.sqrt(0.04 - 0.01);
    const disc = Math.PI * 0.01;
    expectWithin(areaOf(valueOf(clippedContours('intersection', [circle], [aside]))), lens, 2e-4);
    expectWithin(areaOf(valueOf(clippedContours('union', [circle, aside]))), 2 * disc - lens, 2e-4);
    expectWithin(areaOf(valueOf(clippedContours('difference', [circle], [aside]))), disc - lens, 2e-4);
    const holed = valueOf(clippedContours('difference', [sled], [circle]));
    expect(holed.map(isHole).sort()).toEqual([false, true]);
    expectWithin(areaOf(holed), contourArea(sled) - disc, 1e-4);
  });
});

describe('a line of 2,000 points', () => {
  const wavy: Shape = {
    kind: 'polygon',
    points: Array.from({ length: 2000 }, (_, i) => {
      const angle = (i / 2000) * 2 * Math.PI;
      const r = 0.4 + 0.02 * Math.sin(7 * angle);
      return { x: 2 * r * Math.cos(angle), y: r * Math.sin(angle) };
    }),
  };

  it('is placed against many points by looking at few of its segments', () => {
    const contour = valueOf(contourOf(wavy));
    const times = (work: () => void) => {
      const all = Array.from({ length: 7 }, () => {
        const start = process.cpuUsage().user;
        work();
        return process.cpuUsage().user - start;
      });
      return Math.min(...all) / 1000;
    };
    const distances = times(() => {
      for (let i = 0; i < 2000; i++) contourDistance(contour, { x: 0.0007 * i - 0.7, y: 0.0003 * i - 0.3 });
    });
    const offsets = times(() => {
      offsetContour([...contour], 0.04);
    });
    const checked = times(() => {
      plainForm({ kind: 'contour', vertices: [...contour] });
    });
    // Far above what was measured (2, 6 and 2 ms), far below what every segment for every point would take.
    expect({ distances, offsets, checked }).toSatisfy(() => distances < 40 && offsets < 60 && checked < 40);
  });
});
