import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { laminateDensity, mixedFibreDensity, resinArealWeight } from '../../../calc/laminate/areal-mass.ts';
import {
  closestPacking,
  fibreByVolume,
  fibreByWeight,
  fibreByWeightFromMass,
  fibreByWeightFromRatio,
  resinForFibre,
  resinToFibreRatio,
} from '../../../calc/laminate/fraction.ts';
import { fibreByVolumeFromThickness, laminateThickness, layerThickness } from '../../../calc/laminate/thickness.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const fraction = fc.double({ min: 0.02, max: 0.9, noNaN: true });
const densities = fc.record({
  fibre: fc.double({ min: 900, max: 8000, noNaN: true }),
  resin: fc.double({ min: 700, max: 2500, noNaN: true }),
});

describe('fibre fractions', () => {
  it('come back from weight to volume and to weight', () => {
    fc.assert(
      fc.property(fraction, densities, (byWeight, d) => {
        expectWithin(valueOf(fibreByWeight(valueOf(fibreByVolume(byWeight, d)), d)), byWeight, 1e-12);
      }),
    );
  });

  it('say the same in every form', () => {
    fc.assert(
      fc.property(fraction, densities, fc.double({ min: 0.02, max: 5, noNaN: true }), (byVolume, d, w) => {
        const byWeight = valueOf(fibreByWeight(byVolume, d));
        const ratio = valueOf(resinToFibreRatio(byVolume, d));
        const resin = valueOf(resinArealWeight(w, byVolume, d));
        expectWithin(valueOf(fibreByWeightFromRatio(ratio)), byWeight, 1e-12);
        expectWithin(resin, w * ratio, 1e-12);
        expectWithin(resin, valueOf(resinForFibre(w, byWeight)), 1e-9);
        expectWithin(valueOf(fibreByWeightFromMass(w, w + resin)), byWeight, 1e-9);
        const thickness = valueOf(layerThickness(w, d.fibre, byVolume));
        expectWithin(valueOf(laminateThickness(w, byWeight, d)), thickness, 1e-9);
        expectWithin(valueOf(laminateDensity(byVolume, d)) * thickness, w + resin, 1e-9);
        expectWithin(valueOf(fibreByVolumeFromThickness(w, d.fibre, thickness)), byVolume, 1e-9);
      }),
    );
  });

  it('have a ceiling that round fibres set', () => {
    expectWithin(closestPacking, 0.9069, 1e-4);
    expect(problemOf(fibreByVolumeFromThickness(1, 2560, 0.0004))).toMatch(/90.7 %/);
  });

  it('of nothing or of everything are no mixture', () => {
    for (const bad of [0, 1, 52, -0.1, Number.NaN]) {
      expect(problemOf(fibreByVolume(bad, { fibre: 2560, resin: 1150 }))).toMatch(/between 0 and 100 %/);
    }
    expect(problemOf(layerThickness(0.68, 0, 0.5))).toMatch(/density of the fibre/);
    expect(problemOf(fibreByWeightFromMass(1, 0.9))).toMatch(/weigh more/);
  });

  it('take the fibres of a mixed cloth by their volume', () => {
    const shares = [
      { arealWeight: 0.1, density: 2560 },
      { arealWeight: 0.1, density: 1800 },
    ];
    expectWithin(valueOf(mixedFibreDensity(shares)), 0.2 / (0.1 / 2560 + 0.1 / 1800), 1e-12);
    expect(problemOf(mixedFibreDensity([]))).toMatch(/at least one fibre/);
  });
});
