import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainMass, pressureForFill, temperatureForViscosity } from '../../../calc/record/explain.ts';
import { viscosityAt } from '../../../calc/resin/viscosity.ts';
import { ratioByWeighings, readingsOfMix } from '../../../calc/resin/weighing.ts';
import { problemOf, valueOf } from '../outcomes.ts';

describe('a mass off the plan', () => {
  // by hand: 1 kg of glass at 2540 kg/m3 and 52 % by volume takes 0.4 kg / 1 of resin at 1100: (1/2540) (48/52) 1100 = 0.39976
  const resin = (1 / 2540) * (48 / 52) * 1100;
  const plan = { total: 1 + resin, fibre: 1, resinInCloth: resin, fibreDensity: 2540, resinDensity: 1100 };

  it('6 % over a plan of 52 % is a fibre fraction of 47 %', () => {
    const told = valueOf(explainMass(plan, plan.total * 1.06));
    expect(told.fibreByVolume.planned).toBeCloseTo(0.52, 10);
    expect(told.resinMore).toBeCloseTo(0.084, 3);
    expect(told.fibreByVolume.now).toBeCloseTo(0.4724, 3);
  });

  it('leaves the plan where nothing is off', () => {
    const told = valueOf(explainMass(plan, plan.total));
    expect(told.off).toBe(0);
    expect(told.fibreByWeight.now).toBe(told.fibreByWeight.planned);
  });

  it('under the mass of the dry layers is no resin at all', () => {
    expect(problemOf(explainMass(plan, 0.9))).toMatch(/layer is missing/);
  });
});

describe('a fill off the plan', () => {
  const readings = [
    { temperature: 296.15, value: 0.29 },
    { temperature: 303.15, value: 0.18 },
  ];
  const viscosity = (temperature: number) => {
    const at = viscosityAt(readings, temperature);
    return 'problem' in at ? at : at.value;
  };

  it('is explained by the temperature at which the resin is as much thicker', () => {
    const temperature = valueOf(temperatureForViscosity(viscosity, 296.15, 0.18 / 0.29));
    expect(temperature).toBeCloseTo(303.15, 6);
  });

  it('40 % slower is a shop of 18.4 instead of 23 degC for a resin of these two readings', () => {
    // by hand: E/R = ln(0.29/0.18) / (1/296.15 - 1/303.15) = 6116 K; 1/T = 1/296.15 + ln 1.4 / 6116
    const byHand = 1 / (1 / 296.15 + Math.log(1.4) / (Math.log(0.29 / 0.18) / (1 / 296.15 - 1 / 303.15)));
    expect(valueOf(temperatureForViscosity(viscosity, 296.15, 1.4))).toBeCloseTo(byHand, 6);
  });

  it('or by the pressure that drove it', () => {
    expect(pressureForFill(90_000, 1.5)).toBe(60_000);
  });

  it('is not explained by a shop at the boil', () => {
    expect(problemOf(temperatureForViscosity(viscosity, 296.15, 1e-6))).toMatch(/no temperature/);
  });
});

describe('a mix by two weighings', () => {
  it('100:31 by weight with 5 %: 1300 g of resin, the balance then shows 1703 g, between 1682.85 and 1723.15', () => {
    const [resin, hardener] = valueOf(
      readingsOfMix(
        [
          { what: 'resin', mass: 1.3 },
          { what: 'hardener', mass: 0.403 },
        ],
        0.05,
      ),
    );
    expect(resin?.shows).toBe(1.3);
    expect(resin?.between).toBeUndefined();
    expect(hardener?.shows).toBeCloseTo(1.703, 12);
    expect(hardener?.between?.low).toBeCloseTo(1.68285, 12);
    expect(hardener?.between?.high).toBeCloseTo(1.72315, 12);
  });

  it('is read back as the ratio that was mixed', () => {
    expect(ratioByWeighings(1.3, 1.703)).toBeCloseTo(31, 10);
    expect(problemOf(ratioByWeighings(1.3, 1.3))).toMatch(/no more than the first/);
  });

  it('the limits always hold what was meant', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 5, noNaN: true }), { minLength: 2, maxLength: 4 }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (masses, tolerance) => {
          const readings = valueOf(
            readingsOfMix(
              masses.map((mass) => ({ what: 'part', mass })),
              tolerance,
            ),
          );
          for (const { shows, between } of readings) {
            if (between === undefined) continue;
            expect(between.low).toBeLessThanOrEqual(shows + 1e-12);
            expect(between.high).toBeGreaterThanOrEqual(shows - 1e-12);
          }
        },
      ),
    );
  });
});
