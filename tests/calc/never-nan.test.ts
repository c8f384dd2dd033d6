import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as dewPoint from '../../calc/air/dew-point.ts';
import * as film from '../../calc/bag/film.ts';
import * as pleats from '../../calc/bag/pleats.ts';
import { dartNeeds, shareDarts } from '../../calc/cloth/darts.ts';
import * as lanes from '../../calc/cloth/lanes.ts';
import { landingOf, wrapReach } from '../../calc/cloth/wrap.ts';
import * as labour from '../../calc/cost/labour.ts';
import * as partCost from '../../calc/cost/part-cost.ts';
import * as purchase from '../../calc/cost/purchase.ts';
import * as drape from '../../calc/curve/drape.ts';
import * as surface from '../../calc/curve/surface.ts';
import * as fibreBed from '../../calc/flow/fibre-bed.ts';
import * as front from '../../calc/flow/front.ts';
import * as layered from '../../calc/flow/layered.ts';
import * as arealMass from '../../calc/laminate/areal-mass.ts';
import * as fraction from '../../calc/laminate/fraction.ts';
import * as thickness from '../../calc/laminate/thickness.ts';
import { isImpossible, type Outcome } from '../../calc/outcome.ts';
import { chordsAcross } from '../../calc/outline/across.ts';
import { signedDistance } from '../../calc/outline/distance.ts';
import { shapeArea, shapeBounds, shapePerimeter } from '../../calc/outline/measure.ts';
import { offsetArea, offsetPerimeter } from '../../calc/outline/offset.ts';
import { netArea, standsOut } from '../../calc/outline/placed.ts';
import type { Shape } from '../../calc/outline/shape.ts';
import { turns } from '../../calc/outline/turns.ts';
import * as arrhenius from '../../calc/resin/arrhenius.ts';
import * as catalyst from '../../calc/resin/catalyst.ts';
import * as coreCuts from '../../calc/resin/core-cuts.ts';
import * as mix from '../../calc/resin/mix.ts';
import * as potMass from '../../calc/resin/pot-mass.ts';
import * as standing from '../../calc/resin/standing.ts';
import { viscosityAt } from '../../calc/resin/viscosity.ts';
import * as workingTime from '../../calc/resin/working-time.ts';
import * as atmosphere from '../../calc/vacuum/atmosphere.ts';
import * as force from '../../calc/vacuum/force.ts';
import * as gauge from '../../calc/vacuum/gauge.ts';
import * as leak from '../../calc/vacuum/leak.ts';
import * as pump from '../../calc/vacuum/pump.ts';

/** Numbers that break formulas, among those of the bench. */
const nasty = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 2, 1e-320, 1e-30, 1e30, 1e308, -1e308, Number.NaN, Infinity, -Infinity, 0.5, 300, 1e5),
  fc.double({ min: 1e-4, max: 10 }),
  fc.double(),
);

type Formula = (a: number, b: number, c: number, d: number) => unknown;

const at = (temperature: number, value: number) => ({ temperature, value });

const formulas: Readonly<Record<string, Formula>> = {
  saturationPressure: dewPoint.saturationPressure,
  dewPoint: dewPoint.dewPoint,
  bagFilm: (a, b, c, d) =>
    film.bagFilm({ length: a, width: b, stackHeight: c, hem: d }, { count: Math.round(a), height: c }),
  tapeLength: (a, b, c) => film.tapeLength(a, { count: b, height: c }),
  pleatPairs: pleats.pleatPairs,
  pleatsNeeded: pleats.pleatsNeeded,
  dartNeeds: (a, b, c, d) =>
    dartNeeds(
      [
        { turn: a, length: b },
        { turn: c, length: d },
      ],
      { reach: a, landing: b },
      { shear: c, widest: d, keepOff: b },
    ),
  lanesFor: lanes.lanesFor,
  wrapReach: (a, b, c, d) =>
    wrapReach({ height: a, thickness: b, toolSide: { kind: 'round', radius: c }, landingSide: { kind: 'square' } }, d),
  landingOf: (a, b, c, d) =>
    landingOf(
      { height: a, thickness: b, toolSide: { kind: 'square' }, landingSide: { kind: 'chamfer', across: c, down: b } },
      d,
    ),
  labourCost: labour.labourCost,
  timeForArea: labour.timeForArea,
  mouldShare: partCost.mouldShare,
  partCost: (a, b, c, d) => partCost.partCost({ material: a, consumables: b, labour: c, mould: d }, a),
  taken: purchase.taken,
  lengthOffRoll: purchase.lengthOffRoll,
  purchase: purchase.purchase,
  kozenyCarman: fibreBed.kozenyCarman,
  gebart: fibreBed.gebart,
  lineFillTime: (a, b, c, d) => front.lineFillTime({ porosity: a, permeability: b }, { viscosity: c, pressure: d }, b),
  radialFillTime: (a, b, c, d) =>
    front.radialFillTime({ porosity: a, permeability: b }, { viscosity: c, pressure: d }, a, b),
  lineReach: (a, b, c, d) => front.lineReach({ porosity: a, permeability: b }, { viscosity: c, pressure: d }, b),
  permeabilityFromStrip: (a, b, c, d) => front.permeabilityFromStrip(a, { viscosity: b, pressure: c }, d, b),
  besideEachOther: (a, b, c) => layered.besideEachOther([{ thickness: a, permeability: b, porosity: c }]),
  onTopOfEachOther: (a, b) => layered.onTopOfEachOther([{ thickness: a, through: b }]),
  meshLead: (a, b, c, d) => layered.meshLead({ thickness: a, permeability: b }, { thickness: c, through: d }),
  resinArealWeight: (a, b, c, d) => arealMass.resinArealWeight(a, b, { fibre: c, resin: d }),
  laminateDensity: (a, b, c) => arealMass.laminateDensity(a, { fibre: b, resin: c }),
  mixedFibreDensity: (a, b) => arealMass.mixedFibreDensity([{ arealWeight: a, density: b }]),
  fibreByVolume: (a, b, c) => fraction.fibreByVolume(a, { fibre: b, resin: c }),
  fibreByWeight: (a, b, c) => fraction.fibreByWeight(a, { fibre: b, resin: c }),
  fibreByWeightFromRatio: fraction.fibreByWeightFromRatio,
  resinToFibreRatio: (a, b, c) => fraction.resinToFibreRatio(a, { fibre: b, resin: c }),
  resinForFibre: fraction.resinForFibre,
  fibreByWeightFromMass: fraction.fibreByWeightFromMass,
  layerThickness: thickness.layerThickness,
  laminateThickness: (a, b, c, d) => thickness.laminateThickness(a, b, { fibre: c, resin: d }),
  fibreByVolumeFromThickness: thickness.fibreByVolumeFromThickness,
  arrhenius: (a, b, c, d) => arrhenius.arrhenius(at(a, b), c, d),
  activationEnergy: (a, b, c, d) => arrhenius.activationEnergy(at(a, b), at(c, d)),
  viscosityAt: (a, b, c, d) => viscosityAt([at(a, b), at(c, d)], b),
  workingTimeAt: (a, b, c, d) => workingTime.workingTimeAt([at(a, b)], c, d),
  factorPer10K: (a, b, c, d) => workingTime.factorPer10K(at(a, b), at(c, d)),
  gelAtDose: (a, b, c, d) => workingTime.gelAtDose({ dose: a, value: b }, { dose: c, value: d }, a),
  doseByWeight: catalyst.doseByWeight,
  weightDoseOf: catalyst.weightDoseOf,
  stepOfDose: catalyst.stepOfDose,
  smallestBatch: catalyst.smallestBatch,
  perforation: coreCuts.perforation,
  kerfVolume: (a, b, c) => coreCuts.kerfVolume({ pitch: a, width: b, depth: c, ways: 2 }),
  stretchAt: (a, b, c) => surface.stretchAt({ along: a, across: b }, c),
  leastBendRadius: (a, b, c) => surface.leastBendRadius(a, { radius: b, at: c }),
  cutMovement: (a, b, c) => surface.cutMovement({ pitch: a, depth: b, radius: c }),
  closedCutRadius: (a, b, c) => surface.closedCutRadius({ pitch: a, width: b, depth: c }),
  cutOpening: surface.cutOpening,
  edgeMoment: (a, b) => drape.edgeMoment((inset) => offsetArea({ kind: 'circle', diameter: b }, -inset), a),
  leftOver: drape.leftOver,
  grooveRoom: (a, b, c, d) => coreCuts.grooveRoom({ length: a, width: b, depth: c, filled: d }),
  surfaceUptake: coreCuts.surfaceUptake,
  splitMix: (a, b, c, d) => mix.splitMix(a, [b, c], d),
  ratioByWeight: (a, b, c, d) => mix.ratioByWeight([a, b], [c, d]),
  ratioDeviation: (a, b, c, d) => mix.ratioDeviation([a, b], [c, d]),
  ratioSpread: (a, b, c) => mix.ratioSpread([a, b], c),
  potLifeOf: (a, b, c, d) => potMass.potLifeOf({ mass: a, value: b }, c, d),
  largestPot: (a, b, c, d) => potMass.largestPot({ mass: a, value: b }, c, d),
  massExponent: (a, b, c, d) => potMass.massExponent({ mass: a, value: b }, { mass: c, value: d }),
  batchesOf: potMass.batchesOf,
  resinInTube: standing.resinInTube,
  meshUptake: standing.meshUptake,
  sheetUptake: standing.sheetUptake,
  filmMass: standing.filmMass,
  standardPressure: atmosphere.standardPressure,
  bagForce: force.bagForce,
  absoluteFromGauge: gauge.absoluteFromGauge,
  gaugeFromAbsolute: gauge.gaugeFromAbsolute,
  leakRate: leak.leakRate,
  leakOfLimit: (a, b, c, d) => leak.leakOfLimit({ rise: a, time: b }, { rise: c, time: d }),
  shortestTest: (a, b, c) => leak.shortestTest({ rise: a, time: b }, c),
  pumpAbsolute: (a, b) => pump.pumpLeaves({ absolute: a }, b),
  pumpGauge: (a, b) => pump.pumpLeaves({ gaugeAtSeaLevel: a }, b),
  headOf: pump.headOf,
  drivingPressure: pump.drivingPressure,
};

const shapes = (a: number, b: number, c: number): Shape[] => [
  { kind: 'rectangle', length: a, width: b },
  { kind: 'rounded', length: a, width: b, corner: c },
  { kind: 'circle', diameter: a },
  { kind: 'ellipse', length: a, width: b },
  { kind: 'capsule', length: a, width: b },
  {
    kind: 'polygon',
    points: [
      { x: a, y: b },
      { x: b, y: c },
      { x: c, y: a },
      { x: 0, y: 0 },
    ],
  },
];

const outlineFormulas: Readonly<Record<string, (shape: Shape, d: number) => Outcome<unknown>>> = {
  shapeArea,
  shapePerimeter,
  shapeBounds,
  turns,
  chordsAcross,
  offsetPerimeter,
  offsetArea,
  signedDistance: (shape, d) => signedDistance(shape, { x: d, y: d }),
  standsOut: (shape, d) => standsOut({ shape, centre: { x: d, y: 0 } }, { shape, centre: { x: 0, y: 0 }, angle: d }),
  netArea: (shape, d) => netArea(shape, [{ shape: { kind: 'circle', diameter: d }, centre: { x: 0, y: 0 } }]),
  darts: (shape, d) => {
    const stretches = turns(shape);
    if (isImpossible(stretches)) return stretches;
    const needs = dartNeeds(stretches, { reach: 0.04, landing: 0.02 }, { shear: 0, widest: d, keepOff: 0 });
    return isImpossible(needs) ? needs : shareDarts(needs, 7);
  },
};

function expectTold(outcome: unknown): void {
  if (typeof outcome === 'number') expect(Number.isFinite(outcome), String(outcome)).toBe(true);
  else if (typeof outcome === 'object' && outcome !== null) for (const part of Object.values(outcome)) expectTold(part);
  else expect(outcome).toBeDefined();
}

describe('no formula ever tells NaN or Infinity', () => {
  it.each(Object.entries(formulas))('%s', (_, formula) => {
    fc.assert(
      fc.property(nasty, nasty, nasty, nasty, (a, b, c, d) => expectTold(formula(a, b, c, d))),
      { numRuns: 400 },
    );
  });

  it.each(Object.entries(outlineFormulas))('%s of outlines', (_, formula) => {
    fc.assert(
      fc.property(nasty, nasty, nasty, nasty, (a, b, c, d) => {
        for (const shape of shapes(a, b, c)) expectTold(formula(shape, d));
      }),
      { numRuns: 150 },
    );
  });
});
