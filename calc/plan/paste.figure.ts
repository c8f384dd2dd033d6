import { filletSection } from '../bond/fillet.ts';
import {
  allKnown,
  type Bench,
  type Figure,
  ifKnown,
  known,
  knownBy,
  quantity,
  text,
  type Usual,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { stackHeight } from '../laminate/height.figure.ts';
import { pasteDensity } from '../laminate/mass.figure.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import type { Step } from '../model/index.ts';
import { inRecipe, outlinePerimeter, partArea } from '../outline/part.figure.ts';
import { ANGLE, AREAL_WEIGHT, LENGTH, MASS } from '../quantity/index.ts';
import { BED_THICKNESS } from '../resin/uptake-defaults.ts';
import { laidStack } from '../stack/laid.figure.ts';
import { reachesEdge } from '../stack/order.ts';
import { allSaid, amountOf, bondLine, filletRadius, meetingAngle, pasteOf } from './reading.ts';
import { bothSides, holesDrilled, layersNamed, namedArea, workedLength } from './worked-on.figure.ts';

/*
 * Paste and resin that a step names and spreads itself: how much, where the step says enough. A bed that the layer
 * has, and the faces of a core, are resin of their layer and not counted here.
 */

const BOND_LINE: Usual = {
  habit: 'bond_line',
  what: 'thickness of a bond',
  value: quantity(0.0015, LENGTH),
  source: 'common practice: 0.5 to 3 mm',
};
const EDGE_SEAL: Usual = {
  habit: 'edge_seal',
  what: 'resin that a cut edge or the wall of a hole takes',
  value: quantity(0.3, AREAL_WEIGHT),
  source: 'from memory: 200 to 500 g/m2 of cut face, two coats',
};
const FAIRING: Usual = {
  habit: 'fairing',
  what: 'thickness of fairing over the whole face',
  value: quantity(0.0005, LENGTH),
  source: 'common practice, from memory: half a millimetre on average',
};

/** Mass of what is spread, kg; nothing where the step does not say enough. */
export function pasteMass(bench: Bench, step: Step): Figure<number> | undefined {
  const name = pasteOf(step);
  const kind = name === undefined ? undefined : bench.material(name)?.kind;
  if (name === undefined || (kind !== 'paste' && kind !== 'resin')) return undefined;
  const typed = amountOf(allSaid(step), MASS);
  if (typed !== undefined) return known(typed.si);
  const density = (): Figure<number> => pasteDensity(bench, name);
  switch (step.verb) {
    case 'bed':
      return layersNamed(bench, step).some(({ layer }) => layer.bedded !== undefined)
        ? undefined
        : spread(bench, step, BED_THICKNESS, density);
    case 'bond':
      return together(bondOf(bench, step, density), fillet(bench, step, filletRadius(step), density));
    case 'fillet':
      return fillet(bench, step, filletRadius(step), density);
    case 'fair':
      return product(bench.ask(partArea), usual(bench, FAIRING), density());
    case 'seal edge':
      return product(bench.ask(outlinePerimeter), cutEdge(bench), usual(bench, EDGE_SEAL));
    case 'seal hole':
      return holes(bench);
    default:
      return undefined;
  }
}

const product = (...factors: readonly Figure<number>[]): Figure<number> =>
  whenKnown(
    { a: factors[0] as Figure<number>, b: factors[1] as Figure<number>, c: factors[2] ?? known(1) },
    (v, reasons) => knownBy(v.a * v.b * v.c, reasons),
  );

/** Over the layers that are named: as much to the square metre as is typed, else as thick as is usual. */
function spread(bench: Bench, step: Step, thickness: Usual, density: () => Figure<number>): Figure<number> | undefined {
  const area = namedArea(bench, step);
  if (area === undefined) return undefined;
  const typed = amountOf(allSaid(step), AREAL_WEIGHT);
  return typed === undefined
    ? product(area, usual(bench, thickness), density())
    : ifKnown(area, (area, reasons) => knownBy(area * typed.si, reasons));
}

/** Of a bonded layer the whole face. What is bought, or is the part of another recipe, says nothing of its face. */
function bondOf(bench: Bench, step: Step, density: () => Figure<number>): Figure<number> | undefined {
  const area = namedArea(bench, step);
  const line = bondLine(step);
  return area === undefined
    ? undefined
    : product(area, line === undefined ? usual(bench, BOND_LINE) : known(line.amount.si), density());
}

/** Section of the fillet, along the corner, on one side or on both. */
function fillet(
  bench: Bench,
  step: Step,
  radius: number | undefined,
  density: () => Figure<number>,
): Figure<number> | undefined {
  const length = radius === undefined ? undefined : workedLength(bench, step);
  if (radius === undefined || length === undefined) return undefined;
  const angle = meetingAngle(step)?.si ?? Math.PI / 2;
  const words = text('a fillet of {radius} between faces that meet at {angle}', {
    radius: quantity(radius, LENGTH),
    angle: quantity(angle, ANGLE),
  });
  const section = worked(filletSection(radius, angle), words, { at: inRecipe(bench, step.path) });
  const sides = bothSides(step) ? 2 : 1;
  return ifKnown(product(section, length, density()), (mass, reasons) => knownBy(mass * sides, reasons));
}

function together(a: Figure<number> | undefined, b: Figure<number> | undefined): Figure<number> | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return whenKnown({ a, b }, (v, reasons) => knownBy(v.a + v.b, reasons));
}

/** Height of the cut edge, m: of all layers that reach it. */
const cutEdge = (bench: Bench): Figure<number> =>
  ifKnown(bench.ask(laidStack), ({ layers }) => {
    const cut = layers.filter(reachesEdge).map(({ key }) => bench.ask(layerThickness, key));
    return ifKnown(allKnown(cut), (each, reasons) =>
      knownBy(
        each.reduce((sum, thickness) => sum + thickness, 0),
        reasons,
      ),
    );
  });

/** The walls of all holes that are drilled through the part. */
function holes(bench: Bench): Figure<number> | undefined {
  const way = holesDrilled(bench).reduce((sum, { count, width }) => sum + count * Math.PI * width, 0);
  return way > 0 ? product(known(way), bench.ask(stackHeight), usual(bench, EDGE_SEAL)) : undefined;
}
