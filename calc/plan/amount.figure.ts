import { lineLength, processSteps, sheetArea, stepAt, tapeLength } from '../bag/bag.figure.ts';
import { TUBE_LENGTH } from '../bag/habits.ts';
import { layerArea, layerClothArea } from '../cloth/area.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  type Usual,
  usual,
  whenKnown,
} from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { inRecipe, outlinePerimeter, partArea } from '../outline/part.figure.ts';
import { ownOfVerb } from '../own.ts';
import { AREA, AREAL_WEIGHT, LENGTH, MASS } from '../quantity/index.ts';
import { infusedResin } from '../resin/infused.figure.ts';
import { wettedAt } from '../resin/wetted.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isCloth } from '../stack/order.ts';
import { coatsOf, mouldArea, onCaul, painted, released } from './coats.figure.ts';
import { bagFilm, cores, drilled, masked, onLayers, paste, pieces } from './hand-work.figure.ts';
import { layPlan } from './lay.figure.ts';
import { allSaid, amountOf, head, namedBehind, subject } from './reading.ts';
import { type Amounts, type Coats, counted, item, type StepItem, worksOn } from './step-item.ts';
import { namedEdge, workedLength } from './worked-on.figure.ts';

export type { StepItem } from './step-item.ts';

export interface StepAmount {
  readonly items: readonly StepItem[];
  readonly coats?: Coats;
}

const TACK_WEIGHT: Usual = {
  habit: 'tack',
  what: 'spray adhesive',
  value: quantity(0.015, AREAL_WEIGHT),
  source: 'from memory: 10 to 25 g/m2',
};

/** Whether a step neither puts down nor uses up nor works on anything that is measured. */
export const takesNothing = ({ verb }: Step): boolean => ownOfVerb(AMOUNTS, verb) === undefined;

/** What and how much a step takes. */
export const stepAmount = defineFigure<StepAmount>('step_amount', (bench, path) => {
  const found = stepAt(bench, path);
  if (!isKnown(found)) return found;
  const step = found.value;
  const amounts = ownOfVerb(AMOUNTS, step.verb);
  if (amounts === undefined) return nothing;
  const items = allKnown(amounts(bench, step));
  if (!isKnown(items)) return items;
  const coats = step.verb === 'release' ? coatsOf(bench, step) : undefined;
  return knownBy({ items: items.value, coats }, items.reasons);
});

const nothing = known<StepAmount>({ items: [] });

const sheet: Amounts = (bench, step) => [item(bench.ask(sheetArea, step.path), step.verb, AREA, step)];
const edge: Amounts = (bench, step) => [item(bench.ask(outlinePerimeter), 'edge', LENGTH, step, false)];
const face: Amounts = (bench, step) => [item(bench.ask(partArea), 'face', AREA, step, false)];

const AMOUNTS: Readonly<Record<string, Amounts>> = {
  clean: (bench, step) => [item(bench.ask(mouldArea), 'mould', AREA, step, false)],
  release: (bench, step) => [released(bench, step)],
  tape: (bench, step) => [item(bench.ask(tapeLength), 'tape', LENGTH, step)],
  mask: (bench, step) => masked(bench, step),
  unmask: edge,
  trim: edge,
  'seal edge': (bench, step) => [...edge(bench, step), ...paste(bench, step)],
  'seal hole': (bench, step) => [...drilled(bench), ...paste(bench, step)],
  chamfer: (bench, step) => worksOn(namedEdge(bench, step), 'edge', LENGTH, step),
  score: onLayers,
  shape: onLayers,
  perforate: onLayers,
  'wet out': onLayers,
  'roll out': (bench, step) => (step.arguments.length === 0 ? face(bench, step) : onLayers(bench, step)),
  cut: (bench, step) => pieces(bench, step),
  bed: (bench, step) => [...onLayers(bench, step), ...paste(bench, step)],
  'bag down': (bench, step) => [...onLayers(bench, step), ...bagFilm(bench, step, namedBehind(step, 'with'))],
  bond: (bench, step) => [...worksOn(workedLength(bench, step), 'joint', LENGTH, step), ...paste(bench, step)],
  fillet: (bench, step) => [...worksOn(workedLength(bench, step), 'joint', LENGTH, step), ...paste(bench, step)],
  pour: paste,
  fill: paste,
  caul: (bench, step) => onCaul(bench, step),
  dam: (bench, step) => [item(bench.ask(outlinePerimeter), 'dam', LENGTH, step)],
  'seal core': cores,
  tack: (bench, step) => [tacked(bench, step)],
  lay: laid,
  peel: sheet,
  perforated: sheet,
  mesh: sheet,
  film: sheet,
  bleeder: sheet,
  breather: sheet,
  pull: face,
  sand: face,
  wipe: face,
  wash: face,
  fair: (bench, step) => [...face(bench, step), ...paste(bench, step)],
  polish: face,
  prime: (bench, step) => [...face(bench, step), ...painted(bench, step)],
  paint: (bench, step) => [...face(bench, step), ...painted(bench, step)],
  feed: (bench, step) => lineAmounts(bench, step),
  vent: (bench, step) => lineAmounts(bench, step),
  bag: (bench, step) => bagFilm(bench, step, step.material),
  infuse: (bench, step) => [item(bench.ask(infusedResin), 'resin', MASS, step, false)],
  drill: (_, step) => counted(step, 'holes'),
  thermocouple: (_, step) => counted(step, 'thermocouples'),
};

/** Spray adhesive between layers: all that the next `lay` puts down but its first piece. */
function tacked(bench: Bench, step: Step): Figure<StepItem> {
  const said = amountOf(head(step), AREAL_WEIGHT);
  const weight =
    said === undefined
      ? usual(bench, TACK_WEIGHT)
      : known(said.si, reason('typed', text('{weight}', { weight: said }), { at: inRecipe(bench, step.path) }));
  return whenKnown(
    { weight, plan: bench.ask(layPlan), steps: bench.ask(processSteps) },
    ({ weight: w, plan, steps }, reasons) => {
      const next = steps.slice(steps.indexOf(step) + 1).find((s) => plan.layersOf.has(s.path));
      const layers = (next === undefined ? [] : (plan.layersOf.get(next.path) ?? [])).slice(1);
      return ifKnown(allKnown(layers.map((l) => bench.ask(layerArea, l.key))), (areas, more) => {
        const area = areas.reduce((sum, a) => sum + a, 0);
        const words = text('{weight} on {area}', { weight: quantity(w, AREAL_WEIGHT), area: quantity(area, AREA) });
        return known(
          { what: 'tack', material: step.material ?? subject(step), amount: quantity(area * w, MASS), bought: true },
          reason('computed', words, { reasons: [...reasons, ...more] }),
        );
      });
    },
  );
}

function laid(bench: Bench, step: Step): Figure<StepItem>[] {
  const plan = bench.ask(layPlan);
  const items: Figure<StepItem>[] = [];
  for (const layer of isKnown(plan) ? (plan.value.layersOf.get(step.path) ?? []) : []) items.push(piece(bench, layer));
  if (bench.recipe.process?.kind !== 'prepreg') items.push(wetResin(bench, step));
  return items;
}

function piece(bench: Bench, l: LaidLayer): Figure<StepItem> {
  const area = isCloth(l) ? bench.ask(layerClothArea, l.key) : bench.ask(layerArea, l.key);
  if (!isKnown(area)) return area;
  const amount = quantity(area.value, AREA);
  return knownBy({ what: l.name, material: l.layer.material, amount, bought: false }, area.reasons);
}

/** Resin that goes down with the layers: all of it by hand and for coats, none for dry cloth that is infused. */
function wetResin(bench: Bench, step: Step): Figure<StepItem> {
  const wet = wettedAt(bench, step);
  if (!isKnown(wet)) return wet;
  let mass = 0;
  for (const item of wet.value) mass += item.mass;
  return knownBy({ what: 'resin', material: undefined, amount: quantity(mass, MASS), bought: false }, wet.reasons);
}

/** The line on the part, and the tube that leads to it where one is named. */
function lineAmounts(bench: Bench, step: Step): Figure<StepItem>[] {
  const said = allSaid(step).find((a) => a.kind === 'word' && bench.material(a.word)?.consumableKind?.value === 'tube');
  const tube = said?.kind === 'word' ? said.word : undefined;
  const line = item(bench.ask(lineLength, step.path), step.verb, LENGTH, step);
  if (tube === undefined || tube === step.material) return [line];
  return [
    line,
    ifKnown(usual(bench, TUBE_LENGTH), (length, reasons) =>
      knownBy({ what: 'tube', material: tube, amount: quantity(length, LENGTH), bought: true }, reasons),
    ),
  ];
}
