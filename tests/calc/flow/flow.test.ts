import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gebart, kozenyCarman } from '../../../calc/flow/fibre-bed.ts';
import { lineFillTime, lineReach, permeabilityFromStrip, radialFillTime } from '../../../calc/flow/front.ts';
import { besideEachOther, onTopOfEachOther } from '../../../calc/flow/layered.ts';
import { expectWithin, problemOf, valueOf } from '../outcomes.ts';

const bed = { porosity: 0.5, permeability: 1e-10 };
const drive = { viscosity: 0.3, pressure: 95_000 };

/**
 * Time until a front reaches `to`, stepping Darcy's law; `resistance` is what the wet bed behind the front sets against
 * it.
 */
function stepped(to: number, from: number, resistance: (x: number) => number): number {
  const steps = 100_000;
  const dx = (to - from) / steps;
  let time = 0;
  for (let i = 0; i < steps; i++) {
    const x = from + (i + 0.5) * dx;
    time += (bed.porosity * drive.viscosity * resistance(x) * dx) / (bed.permeability * drive.pressure);
  }
  return time;
}

describe('the resin front', () => {
  it('takes the time that Darcy stepped through comes to, in a strip and from a port', () => {
    expectWithin(
      valueOf(lineFillTime(bed, drive, 0.7)),
      stepped(0.7, 0, (x) => x),
      1e-6,
    );
    expectWithin(
      valueOf(radialFillTime(bed, drive, 0.006, 0.25)),
      stepped(0.25, 0.006, (r) => r * Math.log(r / 0.006)),
      1e-6,
    );
  });

  it('reaches as far as the time lets it, and tells the permeability back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 10, noNaN: true }), (length) => {
        const time = valueOf(lineFillTime(bed, drive, length));
        expectWithin(valueOf(lineReach(bed, drive, time)), length, 1e-12);
        expectWithin(valueOf(permeabilityFromStrip(bed.porosity, drive, length, time)), bed.permeability, 1e-12);
      }),
    );
  });

  it('goes nowhere without pressure or room', () => {
    expect(problemOf(lineFillTime(bed, { ...drive, pressure: 0 }, 1))).toMatch(/driving pressure/);
    expect(problemOf(lineFillTime({ ...bed, porosity: 1 }, drive, 1))).toMatch(/porosity/);
    expect(problemOf(radialFillTime(bed, drive, 0.3, 0.25))).toMatch(/more than that of the port/);
  });
});

describe('the permeability of beds', () => {
  it('of one layer is that layer, in parallel above series', () => {
    expect(besideEachOther([{ thickness: 0.003, ...bed }])).toEqual(bed);
    const layers = [
      { thickness: 0.003, through: 5e-12 },
      { thickness: 0.001, through: 1e-9 },
    ];
    const beside = valueOf(besideEachOther(layers.map((l) => ({ ...l, permeability: l.through, porosity: 0.5 }))));
    expect(valueOf(onTopOfEachOther(layers))).toBeLessThan(beside.permeability);
    expect(problemOf(onTopOfEachOther([]))).toMatch(/no layer/);
  });

  it('falls as fibres are packed closer, and across ends where they touch', () => {
    expectWithin(valueOf(kozenyCarman(8.5e-6, 0.55)) / valueOf(kozenyCarman(8.5e-6, 0.45)), 0.37, 0.02);
    expect(valueOf(gebart(8.5e-6, Math.PI / 4)).across).toBe(0);
    expect(problemOf(gebart(8.5e-6, 0.8))).toMatch(/78.5 %/);
  });
});
