/**
 * Worked numbers of the process against values published outside this project: `process.json` names the source of each,
 * its tolerance, and whether the number was read there or is from memory. Every case must have its computation here,
 * and every value that a case expects is compared.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { vapourDensity } from '../../calc/air/vapour.ts';
import { labourCost } from '../../calc/cost/labour.ts';
import { gebart, kozenyCarman } from '../../calc/flow/fibre-bed.ts';
import { lineFillTime, lineReach, permeabilityFromStrip, radialFillTime } from '../../calc/flow/front.ts';
import { besideEachOther, meshLead, onTopOfEachOther } from '../../calc/flow/layered.ts';
import { resinArealWeight } from '../../calc/laminate/areal-mass.ts';
import {
  fibreByVolume,
  fibreByWeightFromRatio,
  resinForFibre,
  resinToFibreRatio,
} from '../../calc/laminate/fraction.ts';
import { laminateThickness } from '../../calc/laminate/thickness.ts';
import type { Outcome } from '../../calc/outcome.ts';
import { doseByWeight } from '../../calc/resin/catalyst.ts';
import { kerfVolume } from '../../calc/resin/core-cuts.ts';
import { ratioDeviation, ratioSpread } from '../../calc/resin/mix.ts';
import { resinInTube, sheetUptake } from '../../calc/resin/standing.ts';
import { viscosityAt } from '../../calc/resin/viscosity.ts';
import { factorPer10K, timeByFactor } from '../../calc/resin/working-time.ts';
import { standardPressure } from '../../calc/vacuum/atmosphere.ts';
import { bagForce } from '../../calc/vacuum/force.ts';
import { absoluteFromGauge } from '../../calc/vacuum/gauge.ts';
import { leakRate, mbarPerMinute } from '../../calc/vacuum/leak.ts';
import { headOf } from '../../calc/vacuum/pump.ts';
import { expectWithin, valueOf } from '../calc/outcomes.ts';

interface PublishedCase {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly read: 'on a public page' | 'from memory';
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: number;
}

const cases = JSON.parse(readFileSync(new URL('process.json', import.meta.url), 'utf8')) as readonly PublishedCase[];

// unit definitions: NIST SP 811 (2008), appendix B.8
const inHg = 3386.389;
const psi = 6894.757;
const poundForcePerFt2 = 47.88026;
const squareFoot = 0.09290304;
const kelvin = (celsius: number) => celsius + 273.15;
const kelvinOfF = (fahrenheit: number) => kelvin((fahrenheit - 32) / 1.8);

/** The inputs of a case by name; a name that is not there fails the case. */
class Inputs {
  readonly values: Readonly<Record<string, unknown>>;

  constructor(values: Readonly<Record<string, unknown>>) {
    this.values = values;
  }

  one(name: string): number {
    const value = this.values[name];
    if (typeof value !== 'number') throw new Error(`no number ${name}`);
    return value;
  }

  list(name: string): number[] {
    const value = this.values[name];
    if (!Array.isArray(value)) throw new Error(`no list ${name}`);
    return value.map(Number);
  }

  texts(name: string): string[] {
    const value = this.values[name];
    if (!Array.isArray(value)) throw new Error(`no list ${name}`);
    return value.map(String);
  }

  inner(name: string): Inputs {
    return new Inputs(this.values[name] as Record<string, unknown>);
  }

  inners(name: string): Inputs[] {
    return (this.values[name] as Record<string, unknown>[]).map((v) => new Inputs(v));
  }
}

const bedOf = (i: Inputs) => ({ porosity: i.one('phi'), permeability: i.one('K_m2') });
const driveOf = (i: Inputs) => ({ viscosity: i.one('mu_Pa_s'), pressure: i.one('dP_Pa') });
const densitiesOf = (i: Inputs) => ({ fibre: i.one('rho_f'), resin: i.one('rho_r') });

type Computed = Readonly<Record<string, Outcome>>;

/** Names, each with the value at the same place of a list. */
function named(names: readonly string[], values: readonly Outcome[]): Computed {
  if (names.length !== values.length) throw new Error(`${names.length} names for ${values.length} values`);
  return Object.fromEntries(names.map((name, i) => [name, values[i] ?? { problem: 'no value' }]));
}

const computations: Readonly<Record<string, (i: Inputs, expected: PublishedCase['expected']) => Computed>> = {
  F1: (i) => ({ t_s: lineFillTime(bedOf(i), driveOf(i), i.one('L_m')) }),
  F2: (i) => {
    const time = lineFillTime(bedOf(i), driveOf(i), i.one('L_m'));
    const half = valueOf(lineFillTime(bedOf(i), driveOf(i), i.one('L_m') / 2));
    return { t_s: time, ratio_to_F1: valueOf(time) / half };
  },
  F3: (i) => ({ L_m: lineReach(bedOf(i), driveOf(i), i.one('t_gel_s')) }),
  F4: (i) => ({ t_s: radialFillTime(bedOf(i), driveOf(i), i.one('r0_m'), i.one('R_m')) }),
  F6: (i) => {
    const layers = [i.inner('preform'), i.inner('mesh')].map((l) => ({ ...bedOf(l), thickness: l.one('h_m') }));
    const bed = valueOf(besideEachOther(layers));
    return { K_eff_m2: bed.permeability, phi_eff: bed.porosity, t_s: lineFillTime(bed, driveOf(i), i.one('L_m')) };
  },
  F7: (i) => {
    const layers = i.inners('layers').map((l) => ({ thickness: l.one('h_m'), through: l.one('Kz_m2') }));
    return { Kz_m2: onTopOfEachOther(layers) };
  },
  F8a: (i) => ({
    lead_m: meshLead(
      { thickness: i.one('h_mesh_m'), permeability: i.one('K_mesh_m2') },
      { thickness: i.one('h_preform_m'), through: i.one('Kz_preform_m2') },
    ),
  }),
  F9: (i) => ({ K_m2: kozenyCarman(i.one('r_f_m'), i.one('Vf'), i.one('k0')) }),
  F10: (i) => {
    const bed = valueOf(gebart(i.one('R_f_m'), i.one('Vf')));
    return { K_par_m2: bed.along, K_perp_m2: bed.across };
  },
  F11: (i) => ({ K_m2: permeabilityFromStrip(i.one('phi'), driveOf(i), i.one('L_m'), i.one('t_s')) }),
  F12: (i, expected) => named(Object.keys(expected), i.list('h_m').map(standardPressure)),
  F13: (i) => {
    const loss = valueOf(standardPressure(0)) - valueOf(standardPressure(i.one('h_m')));
    return { dp_Pa: loss, dp_inHg: loss / inHg };
  },
  F14: (i) => {
    const [deep, shallow] = i.list('vac_inHg').map((g) => valueOf(bagForce(0, g * inHg, 1)).pressure);
    return {
      psi_29_9: (deep ?? 0) / psi,
      lbft2_29_9: (deep ?? 0) / poundForcePerFt2,
      psi_24: (shallow ?? 0) / psi,
      lbft2_24: (shallow ?? 0) / poundForcePerFt2,
    };
  },
  F15: (i) =>
    named(
      ['abs_28_Pa', 'abs_29_Pa'],
      i.list('gauge_inHg').map((g) => absoluteFromGauge(g * inHg, i.one('p_atm_Pa'))),
    ),
  F17: (i) => {
    const rates = i.texts('limits').map((limit) => {
      const [, rise, minutes] = /^(\d+) inHg in (\d+) min$/.exec(limit) ?? [];
      return mbarPerMinute(valueOf(leakRate(Number(rise) * inHg, Number(minutes) * 60)));
    });
    return named(['A', 'B', 'C'], rates);
  },
  F18: (i) => ({ dP_Pa: headOf(i.one('rho_kg_m3'), i.one('rise_m')) }),
  F19: (i) => {
    const reading = { temperature: kelvin(25), value: i.one('mu25_Pa_s') };
    const values = i.list('T_C').map((t) => valueOf(viscosityAt([reading], kelvin(t))).value);
    return named(['mu15', 'mu20', 'mu30', 'mu40'], values);
  },
  F20: (i) => {
    const reading = { temperature: kelvin(i.one('T_ref_C')), value: i.one('t_ref_s') };
    const values = i.list('T_C').map((t) => timeByFactor(reading, kelvin(t), i.one('factor_per_10C')));
    return named(['t15_s', 't35_s'], values);
  },
  F21: (i) => {
    const middle = (name: string) => i.list(name).reduce((sum, t) => sum + t, 0) / 2;
    const [cool, warm] = [middle('gel_70F_min'), middle('gel_80F_min')];
    return {
      f_mid: factorPer10K({ temperature: kelvinOfF(70), value: cool }, { temperature: kelvinOfF(80), value: warm }),
    };
  },
  R1: (i) => ({ resin_kg: resinForFibre(i.one('fabric_kg'), 1 - i.one('resin_fraction')) }),
  R2: (i) => {
    const resin = valueOf(resinForFibre(i.one('glass_kg'), i.one('glass_fraction')));
    return { resin_kg: resin, part_kg: i.one('glass_kg') + resin };
  },
  R3: (i) => ({ glass_weight_fraction: fibreByWeightFromRatio(i.one('resin_to_glass')) }),
  R4: (i, expected) => {
    const densities = { fibre: i.one('rho_ratio_fibre_to_resin'), resin: 1 };
    return named(
      Object.keys(expected),
      i.list('Vf').map((vf) => resinToFibreRatio(vf, densities)),
    );
  },
  R6: (i) => {
    const w = i.one('fabric_kg_m2');
    const resin = resinArealWeight(w, i.one('Vf'), densitiesOf(i));
    return { resin_kg_m2: resin, slip_kg_m2: resinForFibre(w, i.one('Vf')) };
  },
  R8: (i) => ({ uptake_kg_m2: valueOf(sheetUptake(1 / squareFoot, i.one('uptake_kg_per_ft2'))) }),
  R9: (i) =>
    named(
      ['t30_m', 't50_m', 't65_m'],
      i.list('psi').map((psiOf) => laminateThickness(i.one('w_kg_m2'), psiOf, densitiesOf(i))),
    ),
  R10: (i) => {
    const glass = { fibre: i.one('rho_glass'), resin: i.one('rho_epoxy') };
    const carbon = { fibre: i.one('rho_carbon'), resin: i.one('rho_epoxy') };
    const all = i.list('x');
    const of = (share: number) => all.find((x) => x === share) ?? Number.NaN;
    return {
      glass60: fibreByVolume(of(0.6), glass),
      glass65: fibreByVolume(of(0.65), glass),
      glass70: fibreByVolume(of(0.7), glass),
      carbon60: fibreByVolume(of(0.6), carbon),
      carbon65: fibreByVolume(of(0.65), carbon),
    };
  },
  R11: (i) => ({ m_kg: resinInTube(i.one('bore_m'), i.one('length_m'), i.one('rho')) }),
  R12: (i) => {
    const kerfs = { pitch: i.one('pitch_m'), width: i.one('kerf_m'), depth: i.one('depth_m'), ways: 2 } as const;
    return { m_kg_m2: valueOf(kerfVolume(kerfs)) * i.one('rho') };
  },
  R14: (i) => {
    const nominal = i.one('nominal');
    const deviations = i.texts('limits').map((limit) => {
      const [a = 0, b = 0] = limit.split(':').map(Number);
      return valueOf(ratioDeviation([a, b], [nominal, 1]));
    });
    const [hi = 0, lo = 0] = deviations;
    return { hi: (1 + hi) * nominal, lo: (1 + lo) * nominal, dev_hi: Math.abs(hi), dev_lo: Math.abs(lo) };
  },
  R15: (i) => {
    const weighed = [i.one('A_g') / 1000, i.one('B_g') / 1000] as const;
    const rounding = valueOf(ratioSpread(weighed, 0.0005));
    const accuracy = valueOf(ratioSpread(weighed, 0.0015));
    return { r_lo: rounding.low, r_hi: rounding.high, s_lo: accuracy.low, s_hi: accuracy.high };
  },
  R17: (i) => {
    const [small = 0, large = 0] = i.list('resin_kg');
    const [one = 0, two = 0, three = 0] = i.list('pct');
    // the rule takes 1 ml of catalyst for 1 g
    const ml = (kg: number, percent: number) => valueOf(doseByWeight(kg, percent / 100, 1000)).volume * 1e6;
    return { a: ml(small, one), b: ml(small, two), c: ml(small, three), d: ml(large, two) };
  },
  S1: (i) => {
    const molar = { mass: i.one('M') / 1000, volume: i.one('Vm_L_mol') / 1000 };
    const milligrams = i.list('ppm').map((ppm) => vapourDensity(ppm * 1e-6, molar.mass, molar.volume) * 1e6);
    return named(['p20', 'p50', 'p100', 'p250'], milligrams);
  },
  C1: (i) => {
    // at one unit of money an hour the labour is the hours
    const hours = (times: readonly number[]): Outcome =>
      labourCost(
        times.reduce((sum, time) => sum + time * 3600, 0),
        1 / 3600,
      );
    const [shapeLow = 0, shapeHigh = 0] = i.list('shape_h');
    const [sandLow = 0, sandHigh = 0] = i.list('sand_h');
    const always = [i.one('laminate_h'), i.one('hotcoat_h'), i.one('plugs_h')];
    return { lo_h: hours([shapeLow, sandLow, ...always]), hi_h: hours([shapeHigh, sandHigh, ...always]) };
  },
  C2: (i) => ({ overlap_m: 100 * valueOf(laminateThickness(i.one('w_kg_m2'), i.one('psi'), densitiesOf(i))) }),
};

describe('published numbers of the process', () => {
  it('are all computed, and each has its source', () => {
    expect(Object.keys(computations).sort()).toEqual(cases.map((c) => c.id).sort());
    for (const { id, source, read } of cases) {
      expect(source.length, id).toBeGreaterThan(5);
      expect(['on a public page', 'from memory']).toContain(read);
    }
  });

  it.each(cases)('$id: $title ($source; $read)', ({ id, inputs, expected, tolerance }) => {
    const computed = computations[id]?.(new Inputs(inputs), expected) ?? {};
    expect(Object.keys(computed).sort()).toEqual(Object.keys(expected).sort());
    for (const [name, value] of Object.entries(expected)) {
      expectWithin(valueOf(computed[name] ?? { problem: `no ${name}` }), value, tolerance);
    }
  });
});
