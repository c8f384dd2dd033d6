import { bagSize, lineLength, processSteps, sheetArea, stepAt, tapeLength } from '../bag/bag.figure.ts';
import { FLANGE, TUBE_LENGTH } from '../bag/habits.ts';
import { layerArea, layerClothArea } from '../cloth/area.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  factOf,
  ifKnown,
  isKnown,
  known,
  knownBy,
  quantity,
  reason,
  siOf,
  text,
  type Usual,
  usual,
  whenKnown,
} from '../figure/index.ts';
import { factPlace, materialAt } from '../laminate/fraction.figure.ts';
import type { Step } from '../model/index.ts';
import { inRecipe, outlinePerimeter, partArea } from '../outline/part.figure.ts';
import { ownOfVerb } from '../own.ts';
import { AREA, AREAL_WEIGHT, LENGTH, MASS, NUMBER, type Quantity, VOLUME } from '../quantity/index.ts';
import { infusedResin } from '../resin/infused.figure.ts';
import { wettedAt } from '../resin/wetted.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isCloth } from '../stack/order.ts';
import { layPlan } from './lay.figure.ts';
import { allSaid, amountOf, clauseWith, countOf, flat, hasWord, head, subject } from './reading.ts';

/** Something that a step puts down, uses up or works on. */
export interface StepItem {
  /** `tape`, `film`, the name of a layer, `resin`, `holes` */
  readonly what: string;
  readonly material?: string;
  readonly amount: Quantity;
  /** a consumable that is bought for it */
  readonly bought: boolean;
}

export interface StepAmount {
  readonly items: readonly StepItem[];
  /** of a release: how many on a new mould, and how many an average part of the order takes */
  readonly coats?: { readonly first: number; readonly average: number };
}

const RELEASE_UPTAKE: Usual = {
  habit: 'release',
  what: 'release agent for one coat',
  value: quantity(0.02, AREAL_WEIGHT),
  source: 'from memory: 10 to 30 g/m2 a coat',
};
const TACK_WEIGHT: Usual = {
  habit: 'tack',
  what: 'spray adhesive',
  value: quantity(0.015, AREAL_WEIGHT),
  source: 'from memory: 10 to 25 g/m2',
};

/** Whether a step neither puts down nor uses up nor works on anything that is measured. */
export const takesNothing = ({ verb }: Step): boolean => ownOfVerb(AMOUNTS, verb) === undefined;

/** What and how much a step takes. */
export const stepAmount = defineFigure<StepAmount>('step_amount', (bench, path) =>
  ifKnown(stepAt(bench, path), (step) => {
    const items = ownOfVerb(AMOUNTS, step.verb);
    if (items === undefined) return known<StepAmount>({ items: [] });
    const coats = step.verb === 'release' ? coatsOf(bench, step) : undefined;
    return ifKnown(allKnown(items(bench, step)), (items, reasons) => knownBy({ items, coats }, reasons));
  }),
);

type Amounts = (bench: Bench, step: Step) => Figure<StepItem>[];

const item = (
  figure: Figure<number>,
  what: string,
  dimension: Quantity['dimension'],
  step: Step,
  bought = true,
): Figure<StepItem> =>
  ifKnown(figure, (size, reasons) => {
    const amount = quantity(size, dimension);
    return knownBy(
      bought ? { what, material: step.material ?? subject(step), amount, bought } : { what, amount, bought },
      reasons,
    );
  });

const sheet: Amounts = (bench, step) => [item(bench.ask(sheetArea, step.path), step.verb, AREA, step)];
const edge: Amounts = (bench, step) => [item(bench.ask(outlinePerimeter), 'edge', LENGTH, step, false)];
const face: Amounts = (bench, step) => [item(bench.ask(partArea), 'face', AREA, step, false)];

const AMOUNTS: Readonly<Record<string, Amounts>> = {
  clean: (bench, step) => [item(bench.ask(mouldArea), 'mould', AREA, step, false)],
  release: (bench, step) => [released(bench, step)],
  tape: (bench, step) => [item(bench.ask(tapeLength), 'tape', LENGTH, step)],
  mask: edge,
  unmask: edge,
  trim: edge,
  seal: edge,
  chamfer: edge,
  dam: (bench, step) => [item(bench.ask(outlinePerimeter), 'dam', LENGTH, step)],
  'seal core': face,
  'seal hole': () => [],
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
  fair: face,
  polish: face,
  prime: face,
  paint: face,
  feed: (bench, step) => lineAmounts(bench, step),
  vent: (bench, step) => lineAmounts(bench, step),
  bag: (bench, step) => [
    item(
      ifKnown(bench.ask(bagSize), (bag, reasons) => knownBy(bag.area, reasons)),
      'film',
      AREA,
      step,
    ),
  ],
  infuse: (bench, step) => [item(bench.ask(infusedResin), 'resin', MASS, step, false)],
  drill: (_, step) => counted(step, 'holes'),
  thermocouple: (_, step) => counted(step, 'thermocouples'),
};

function counted(step: Step, what: string): Figure<StepItem>[] {
  const count = countOf(head(step));
  return count === undefined ? [] : [known({ what, amount: quantity(count, NUMBER), bought: false })];
}

/** The face of the mould with its flange, m2. */
export const mouldArea = defineFigure<number>('mould_area', (bench) => {
  const { stack } = bench.recipe;
  const flange = stack?.tool === undefined ? undefined : bench.tool(stack.tool)?.flange;
  const width = flange === undefined ? usual(bench, FLANGE) : siOf(factOf(flange, 'the flange of the tool', flange.at));
  return whenKnown({ area: bench.ask(partArea), perimeter: bench.ask(outlinePerimeter), width }, (v, reasons) =>
    known(
      v.area + v.perimeter * v.width + Math.PI * v.width * v.width,
      reason('computed', 'the part and the flange round it', { reasons }),
    ),
  );
});

/** `5 coats new, 1 coat every 4 pulls`: what the first part takes, and the average of the order. */
function coatsOf(bench: Bench, step: Step): NonNullable<StepAmount['coats']> {
  const again = clauseWith(step, 'every');
  const first = step.clauses.find((c) => c !== again && hasWord(flat(c), 'coat', 'coats'));
  const coats = first === undefined ? (countOf(head(step)) ?? 1) : (countOf(flat(first)) ?? 1);
  const { quantity: parts } = bench.recipe;
  if (again === undefined || !(parts >= 1)) return { first: coats, average: coats };
  const counts = flat(again).flatMap((a) => (a.kind === 'count' ? [a.count] : []));
  const [more = 1, pulls = 1] = counts.length >= 2 ? counts : [1, counts[0]];
  return { first: coats, average: (coats + more * Math.floor((parts - 1) / Math.max(1, pulls))) / parts };
}

/** Release agent for the average part, by its coverage: m2 to the kg or the litre, or weight for each m2. */
function released(bench: Bench, step: Step): Figure<StepItem> {
  const at = inRecipe(bench, step.path);
  const name = step.material ?? subject(step);
  return whenKnown(
    { agent: materialAt(bench, name, 'the release agent', at), area: bench.ask(mouldArea) },
    ({ agent, area }, reasons) => {
      const covered = area * coatsOf(bench, step).average;
      const put = (amount: Quantity, more: typeof reasons) =>
        known({ what: 'release', material: agent.name, amount, bought: true }, ...more, ...reasons);
      if (agent.coverage === undefined)
        return ifKnown(usual(bench, RELEASE_UPTAKE), (each, more) => put(quantity(covered * each, MASS), more));
      return ifKnown(
        factOf(agent.coverage, text('the coverage of {agent}', { agent: agent.name }), factPlace(agent, 'coverage')),
        (coverage, more) => {
          const { mass, length } = coverage.dimension;
          if (mass === 1) return put(quantity(covered * coverage.si, MASS), more);
          return put(
            quantity(coverage.si > 0 ? covered / coverage.si : 0, mass === -1 && length === 2 ? MASS : VOLUME),
            more,
          );
        },
      );
    },
  );
}

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
  const layers = isKnown(plan) ? (plan.value.layersOf.get(step.path) ?? []) : [];
  return [...layers.map((l) => piece(bench, l)), ...wetResin(bench, step)];
}

function piece(bench: Bench, l: LaidLayer): Figure<StepItem> {
  const area = isCloth(l) ? bench.ask(layerClothArea, l.key) : bench.ask(layerArea, l.key);
  return ifKnown(area, (area, reasons) =>
    knownBy({ what: l.name, material: l.layer.material, amount: quantity(area, AREA), bought: false }, reasons),
  );
}

/** Resin that goes down with the layers: all of it by hand and for coats, none for dry cloth that is infused. */
function wetResin(bench: Bench, step: Step): Figure<StepItem>[] {
  if (bench.recipe.process?.kind === 'prepreg') return [];
  return [
    ifKnown(bench.ask(wettedAt, step.path), (items, reasons) => {
      const mass = items.reduce((sum, item) => sum + item.mass, 0);
      return knownBy({ what: 'resin', amount: quantity(mass, MASS), bought: false }, reasons);
    }),
  ];
}

/** The line on the part, and the tube that leads to it where one is named. */
function lineAmounts(bench: Bench, step: Step): Figure<StepItem>[] {
  const said = allSaid(step);
  const tube = said.flatMap((a) =>
    a.kind === 'word' && bench.material(a.word)?.consumableKind?.value === 'tube' ? [a.word] : [],
  )[0];
  const line = item(bench.ask(lineLength, step.path), step.verb, LENGTH, step);
  if (tube === undefined || tube === step.material) return [line];
  return [
    line,
    ifKnown(usual(bench, TUBE_LENGTH), (length, reasons) =>
      knownBy({ what: 'tube', material: tube, amount: quantity(length, LENGTH), bought: true }, reasons),
    ),
  ];
}
