import { describe, expect, it } from 'vitest';
import { grooveRoom, kerfVolume, perforation, surfaceUptake } from '../../../calc/resin/core-cuts.ts';
import { filmMass, meshUptake, resinInTube, sheetUptake } from '../../../calc/resin/standing.ts';
import { resinToMix } from '../../../calc/resin/to-mix.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

describe('resin outside the laminate', () => {
  it('stands in holes through the core: 400 of 2 mm for each m2 at 50 mm', () => {
    const holes = valueOf(perforation(1, 0.002, 0.05, 0.02));
    expect(holes.holes).toBe(400);
    expectWithin(holes.volume, 400 * Math.PI * 1e-6 * 0.02, 1e-12);
    expect(problemOf(perforation(1, 0.05, 0.05, 0.02))).toMatch(/into each other/);
    expect(problemOf(perforation(1e6, 1e-9, 1e-8, 0.02))).toMatch(/more holes/);
  });

  it('fills cuts: as many cubes of foam are left as a count of them says', () => {
    // 30 mm grid, 1 mm cuts: 29 mm of 30 mm are foam each way
    const grid = { pitch: 0.03, width: 0.001, depth: 0.012, ways: 2 } as const;
    expectWithin(valueOf(kerfVolume(grid)), 0.012 * (1 - (29 / 30) ** 2), 1e-12);
    expectWithin(valueOf(kerfVolume({ ...grid, ways: 1 })), 0.012 / 30, 1e-12);
    expect(problemOf(kerfVolume({ ...grid, width: 0.04 }))).toMatch(/into each other/);
  });

  it('fills a groove round its strip', () => {
    expectWithin(valueOf(grooveRoom({ length: 1, width: 0.02, depth: 0.002, filled: 3e-5 })), 1e-5, 1e-9);
    expect(grooveRoom({ length: 1, width: 0.02, depth: 0.002, filled: 4e-5 })).toBe(0);
    expect(problemOf(grooveRoom({ length: 1, width: 0.02, depth: 0.002, filled: 5e-5 }))).toMatch(/more volume/);
  });

  it('goes into cut cells, mesh, sheets, tubes and films', () => {
    expectWithin(valueOf(surfaceUptake(0.5, 0.2)), 0.2, 1e-12);
    // 0.8 mm of mesh, 80 % void: 704 g/m2
    expectWithin(valueOf(meshUptake(0.0008, 0.8, 1100)), 0.704, 1e-12);
    expectWithin(valueOf(sheetUptake(0.6, 0.075)), 0.045, 1e-12);
    for (const [bore, grams] of [
      [6, 31],
      [8, 55],
      [10, 86],
      [12, 124],
    ] as const) {
      expectWithin(valueOf(resinInTube(bore / 1000, 1, 1100)), grams / 1000, 0.01);
    }
    expectWithin(valueOf(filmMass(500e-6, 2, 1250)), 1.25, 1e-12);
    expect(problemOf(resinInTube(-0.01, 1, 1100))).toMatch(/bore/);
  });

  it('adds up, with an allowance held back', () => {
    const needs = { laminate: 0.7, coreCuts: 0.02, coreSurface: 0.1, peel: 0.05, mesh: 0.2, tubes: 0.08, pot: 0.25 };
    const mix = valueOf(resinToMix(needs, 0.1));
    expectWithin(mix.needed, 1.4, 1e-12);
    expectWithin(mix.total, 1.54, 1e-12);
    expectWithin(mix.needed + mix.allowance, mix.total, 1e-12);
    expect(problemOf(resinToMix({ ...needs, mesh: Number.NaN }, 0.1))).toMatch(/mesh/);
  });
});
