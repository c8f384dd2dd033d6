import { vapourDensity } from '../../calc/air/vapour.ts';
import { benchOf, isKnown } from '../../calc/figure/index.ts';
import { mass } from '../../calc/laminate/mass.figure.ts';
import { type Book, type Material, type Recipe, type Step, UNKNOWN } from '../../calc/model/index.ts';
import { layPlan } from '../../calc/plan/lay.figure.ts';
import { allSaid, allSteps } from '../../calc/plan/reading.ts';
import { liquidsNamed } from '../../calc/resin/named-liquids.ts';
import { stepNeeds } from '../../calc/resin/step-pots.figure.ts';
import type { LaidLayer } from '../../calc/stack/laid.ts';
import { DEFERRAL, hazards, WET } from '../words/cautions.ts';
import type { Applies, ExposureLimit, Hazard } from '../words/hazard.ts';
import { say } from './text.ts';
import { translated } from './translation.ts';

/** A hazard with the steps of a recipe that have it. */
export interface Caution {
  readonly hazard: Hazard;
  readonly steps: readonly Step[];
  /** names of what it comes from; none where it comes from the work itself, as heat does */
  readonly materials: readonly string[];
}

/** Cloth is laid dry into these; their resin comes with `infuse` or in the cloth. */
const LAID_DRY: ReadonlySet<string> = new Set(['infusion', 'prepreg']);
/** Entries that a step may name in place of the resin of the process. */
const LIQUIDS: ReadonlySet<string> = new Set(['resin', 'gelcoat', 'paste']);
/** Steps that cut what the stack is made of. */
const CUTS: ReadonlySet<string> = new Set(['trim', 'drill', 'sand', 'cut', 'fair']);

/** The hazards of one step, by its verb and by what it works with. */
export function cautionsOfStep(recipe: Recipe, step: Step, book: Book): readonly Hazard[] {
  const materials = atWork(recipe, step, book);
  const poured = pouredInto(recipe, step, book);
  return hazards.filter(({ applies }) =>
    applies.some(
      (where) =>
        isMuch(where, recipe, step, book) &&
        ((where.verbs.includes(step.verb) && answers(where, materials, book)) ||
          (isOfLiquids(where) && answers(where, poured, book))),
    ),
  );
}

/** Whoever fills holes or seals an edge handles liquid resin, whatever the step is called. */
const isOfLiquids = (where: Applies): boolean => where.verbs === WET && isOfMaterial(where);

/** Resins and pastes that a step names by itself, and what they are made of. */
const pouredInto = (recipe: Recipe, step: Step, book: Book): readonly Material[] =>
  madeOf(liquidsNamed(benchOf(recipe, book), step), book);

/** Materials at work in a step that have a hazard. */
function sourcesOf({ applies }: Hazard, recipe: Recipe, step: Step, book: Book): string[] {
  const own = applies.filter((where) => where.verbs.includes(step.verb) && isOfMaterial(where));
  const wet = applies.filter(isOfLiquids);
  return [
    ...atWork(recipe, step, book).filter((material) => own.some((where) => answers(where, [material], book))),
    ...pouredInto(recipe, step, book).filter((material) => wet.some((where) => answers(where, [material], book))),
  ].map(({ name }) => name);
}

const isOfMaterial = ({ families, kinds, fibres }: Omit<Applies, 'verbs'>): boolean =>
  families !== undefined || kinds !== undefined || fibres !== undefined;

/** The hazards of a recipe in the order of the table, each with the steps that have it. */
export function cautionsOf(recipe: Recipe, book: Book): readonly Caution[] {
  const steps = allSteps(recipe.process?.steps ?? []).map((step) => ({
    step,
    found: cautionsOfStep(recipe, step, book),
  }));
  return hazards.flatMap((hazard) => {
    const having = steps.filter(({ found }) => found.includes(hazard)).map(({ step }) => step);
    const materials = [...new Set(having.flatMap((step) => sourcesOf(hazard, recipe, step, book)))];
    return having.length === 0 ? [] : [{ hazard, steps: having, materials }];
  });
}

/** A line for a hover: what to do, and who has the last word. */
export function cautionLine(found: readonly Hazard[]): string {
  return found.length === 0 ? '' : `${found.map(({ brief }) => translated(brief)).join(' ')} ${translated(DEFERRAL)}`;
}

/** What a hazard does, from what and where it comes, and the limits of the agencies, line by line. */
export function cautionWords({ hazard, steps, materials }: Caution): string[] {
  const at = [...new Set(steps.map(({ verb }) => verb))].join(', ');
  return [
    translated(hazard.harm),
    materials.length === 0
      ? say('At: {steps}.', { steps: at })
      : say('From: {materials}. At: {steps}.', { materials: materials.join(', '), steps: at }),
    ...hazard.limits.map((limit) => limitWords(limit, hazard)),
    say('Source: {source}.', { source: hazard.source }),
  ];
}

/** A line for the page of a rule: what to do, why, and who has the last word. */
export const cautionOfPage = ({ brief, harm }: Hazard): string =>
  // stands on the page of a rule, and these are English
  `Caution: ${brief} ${harm} ${DEFERRAL}`;

/** `about 430 mg/m3`: two digits, as the tables of the agencies are no finer than that. */
function inAir(ppm: number, molarMass: number): string {
  return say('about {density} mg/m3', {
    density: String(Number((vapourDensity(ppm * 1e-6, molarMass) * 1e6).toPrecision(2))),
  });
}

/** `HSE (UK), EH40/2005 4th ed.: 100 ppm (about 430 mg/m3) over 8 h (2020, from memory)` */
export function limitWords({ agency, values, date, mark }: ExposureLimit, { molarMass }: Hazard): string {
  const told = values.map(({ ppm, says, over }) => {
    const amount =
      ppm === undefined
        ? translated(says ?? '')
        : `${ppm} ppm${molarMass === undefined ? '' : ` (${inAir(ppm, molarMass)})`}`;
    return over === undefined
      ? amount
      : over === 'ceiling'
        ? say('{amount} ceiling', { amount })
        : say('{amount} over {time}', { amount, time: translated(over) });
  });
  return `${translated(agency)}: ${told.join(', ')} (${date}, ${translated(mark)})`;
}

/** A hazard of weight: where it cannot be told what the part or a pot weighs, it is not there. */
function isMuch({ heavierThan, potOver }: Applies, recipe: Recipe, step: Step, book: Book): boolean {
  if (potOver !== undefined) {
    const needs = benchOf(recipe, book).ask(stepNeeds, step.path);
    return isKnown(needs) && needs.value.some(({ mass: all, pots }) => all / pots > potOver);
  }
  if (heavierThan === undefined) return true;
  const weighs = benchOf(recipe, book).ask(mass);
  return isKnown(weighs) && weighs.value > heavierThan;
}

function answers({ families, kinds, fibres }: Applies, materials: readonly Material[], book: Book): boolean {
  if (!isOfMaterial({ families, kinds, fibres })) return true;
  return materials.some((material) => {
    const fibre = fibreOf(material, book);
    return (
      families?.includes(said(material.family?.value) ?? '') === true ||
      kinds?.includes(material.kind) === true ||
      kinds?.includes(said(material.consumableKind?.value) ?? '') === true ||
      fibres?.some((word) => fibre.includes(word)) === true
    );
  });
}

/** Name and title of the fibre that a cloth is made of, and of a cloth or plate itself: a glass plate has no fibre entry. */
function fibreOf(material: Material, book: Book): string {
  const name = said(material.fibre?.value);
  const fibre = name === undefined ? undefined : book.material(name);
  if (fibre === undefined && material.kind !== 'core') return name ?? '';
  const { name: own, title = '' } = fibre ?? material;
  return `${own} ${title}`.toLowerCase();
}

const said = (value: string | typeof UNKNOWN | undefined): string | undefined =>
  value === UNKNOWN ? undefined : value;

/** What a step handles: what it names, what it lays, and the resin of the process where it is wet; what those are made of too. */
function atWork(recipe: Recipe, step: Step, book: Book): readonly Material[] {
  const names = new Set<string>();
  const add = (name: string | undefined): void => {
    if (name !== undefined) names.add(name);
  };
  for (const each of allSaid(step)) if (each.kind === 'word') add(each.word);
  add(step.material);
  add(step.lay?.resin);
  const { resin, kind } = recipe.process ?? {};
  const named = [...names].some((name) => LIQUIDS.has(book.material(name)?.kind ?? ''));
  if (step.lay === undefined ? !named : !LAID_DRY.has(kind ?? '')) add(resin);
  for (const { layer } of worked(recipe, step, book))
    for (const name of [layer.material, layer.wetResin, layer.bedded?.material]) add(name);
  return madeOf([...names], book);
}

/** Materials with what they are made of, each once. */
function madeOf(list: readonly string[], book: Book): readonly Material[] {
  const names = new Set<string>();
  const add = (name: string | undefined): void => {
    if (name === undefined || names.has(name)) return;
    names.add(name);
    const material = book.material(name);
    add(said(material?.madeFrom?.value));
    const catalyst = material?.catalyst?.value;
    if (catalyst !== undefined && catalyst !== UNKNOWN) add(catalyst.material);
    for (const { value } of material?.fillers ?? []) if (value !== UNKNOWN) add(value.material);
  };
  list.forEach(add);
  return [...names].flatMap((name) => book.material(name) ?? []);
}

/** Layers that a step lays, or cuts: a saw goes through all of them. */
function worked(recipe: Recipe, step: Step, book: Book): readonly LaidLayer[] {
  if (step.lay === undefined && !CUTS.has(step.verb)) return [];
  const plan = benchOf(recipe, book).ask(layPlan);
  if (!isKnown(plan)) return [];
  const { layersOf } = plan.value;
  return step.lay === undefined ? [...layersOf.values()].flat() : (layersOf.get(step.path) ?? []);
}
