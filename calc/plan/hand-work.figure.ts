import { bagSize } from '../bag/bag.figure.ts';
import { type Bench, type Figure, ifKnown, isKnown, known, knownBy, quantity } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { outlinePerimeter } from '../outline/part.figure.ts';
import { AREA, LENGTH, MASS, NUMBER } from '../quantity/index.ts';
import { laidStack } from '../stack/laid.figure.ts';
import { pasteMass } from './paste.figure.ts';
import { namedBehind, pasteOf, subject } from './reading.ts';
import { item, type StepItem, worksOn } from './step-item.ts';
import { areaOfAll, holesDrilled, layersNamed, namedArea } from './worked-on.figure.ts';

/*
 * What the work of hands takes: the layers, faces, edges and holes that it is done on, and the paste, tape and film that it
 * uses up.
 */

export function onLayers(bench: Bench, step: Step): Figure<StepItem>[] {
  return worksOn(namedArea(bench, step), 'face', AREA, step);
}

/** Both faces of the cores. */
export function cores(bench: Bench, step: Step): Figure<StepItem>[] {
  const stack = bench.ask(laidStack);
  const layers = isKnown(stack) ? stack.value.layers.filter(({ layer }) => layer.kind === 'core') : [];
  const faces = ifKnown(areaOfAll(bench, layers), (area, reasons) => knownBy(2 * area, reasons));
  return [item(faces, 'face', AREA, step, false)];
}

/** The layers that are cut: those named, else all that are no coat. */
export function pieces(bench: Bench, step: Step): Figure<StepItem>[] {
  const named = layersNamed(bench, step);
  const stack = bench.ask(laidStack);
  const all = step.arguments.length === 0 && isKnown(stack) ? stack.value.layers : named;
  const count = all.filter(({ layer }) => layer.kind !== 'coat').length;
  return count === 0 ? [] : [known({ what: 'pieces', amount: quantity(count, NUMBER), bought: false })];
}

export function paste(bench: Bench, step: Step): Figure<StepItem>[] {
  const mass = pasteMass(bench, step);
  const material = pasteOf(step);
  if (mass === undefined || material === undefined) return [];
  const what = bench.material(material)?.kind === 'paste' ? 'paste' : 'resin';
  return [
    ifKnown(mass, (mass, reasons) => knownBy({ what, material, amount: quantity(mass, MASS), bought: true }, reasons)),
  ];
}

/** Masking tape is bought where one is named. */
export function masked(bench: Bench, step: Step): Figure<StepItem>[] {
  const named = namedBehind(step, 'with') ?? subject(step);
  const tape = named === undefined || bench.material(named) === undefined ? undefined : named;
  const length = bench.ask(outlinePerimeter);
  if (!isKnown(length)) return [length];
  const amount = quantity(length.value, LENGTH);
  return [knownBy({ what: 'edge', material: tape, amount, bought: tape !== undefined }, length.reasons)];
}

export function bagFilm(bench: Bench, step: Step, material: string | undefined): Figure<StepItem>[] {
  if (step.verb !== 'bag' && material === undefined) return [];
  const size = bench.ask(bagSize);
  if (!isKnown(size)) return [size];
  const amount = quantity(size.value.area, AREA);
  return [knownBy({ what: 'film', material: material ?? subject(step), amount, bought: true }, size.reasons)];
}

/** Holes that the recipe drills. */
export function drilled(bench: Bench): Figure<StepItem>[] {
  const count = holesDrilled(bench).reduce((sum, each) => sum + each.count, 0);
  return count === 0 ? [] : [known({ what: 'holes', amount: quantity(count, NUMBER), bought: false })];
}
