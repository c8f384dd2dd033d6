import { lineLength, processSteps, sheetArea } from '../bag/bag.figure.ts';
import { TUBE_LENGTH } from '../bag/habits.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  definePick,
  type Figure,
  factOf,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  missing,
  quantity,
  reason,
  reasonsOf,
  siOf,
  text,
  typed,
  type Usual,
  usual,
  worked,
} from '../figure/index.ts';
import { densityOf, factPlace, materialAt } from '../laminate/fraction.figure.ts';
import { layerResin, type ResinItem } from '../laminate/mass.figure.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { subject } from '../plan/reading.ts';
import { MASS, type Quantity } from '../quantity/index.ts';
import { laidStack } from '../stack/laid.figure.ts';
import { resinInTube, sheetUptake } from './standing.ts';
import { type ResinNeeds, resinToMix as toMixFormula } from './to-mix.ts';
import { MESH_UPTAKE, MIX_ALLOWANCE, PEEL_UPTAKE, POT_RESIDUE } from './uptake-defaults.ts';

/** Resin of one layer, by where it sits. */
export interface LayerResinItem extends ResinItem {
  /** key of the laid layer */
  readonly layer: string;
}

/** All resin, gelcoat and paste of the stack, layer by layer. */
const stackResin = defineFigure<readonly LayerResinItem[]>('stack_resin', (bench) => {
  const stack = bench.ask(laidStack);
  if (!isKnown(stack)) return stack;
  const { layers } = stack.value;
  const each = allKnown(layers.map((laid) => bench.ask(layerResin, laid.key)));
  if (!isKnown(each)) return each;
  const items: LayerResinItem[] = [];
  for (const [i, resin] of each.value.entries())
    for (const item of resin.items) items.push({ ...item, layer: layers[i]?.key ?? '' });
  return knownBy(items, each.reasons);
});

/** The resin that a figure is asked for: by its name, or that of the process where none is named. */
export function resinName(bench: Bench, key: string): Figure<string> {
  if (key !== '') return known(key);
  const { process } = bench.recipe;
  return typed(process?.resin, 'the resin of the process', inRecipe(bench, process?.path ?? ''));
}

/** The material that a figure of a resin is about. */
export const resinMaterial = definePick<MaterialFacts>('resin_material', (bench, key) => {
  const name = resinName(bench, key);
  if (!isKnown(name)) return name;
  const material = bench.material(name.value);
  if (material !== undefined) return known(material);
  return materialAt(bench, name.value, 'the resin', inRecipe(bench, `${bench.recipe.process?.path ?? ''}.resin`));
});

/** Every resin, gelcoat and paste that the recipe mixes, the resin of the process first. */
export const resinsUsed = definePick<readonly string[]>('resins_used', (bench) => {
  const items = bench.ask(stackResin);
  if (!isKnown(items)) return items;
  const own = bench.recipe.process?.resin;
  const names = new Set<string>(own === undefined ? [] : [own]);
  for (const { resin } of items.value) names.add(resin);
  return known([...names].filter((name) => bench.material(name)?.kind !== 'prepreg'));
});

export interface ResinInPart {
  /** kg */
  readonly total: number;
  readonly items: readonly LayerResinItem[];
}

/** Resin that stays in the part: of the process, or of the name that is the key; all of it where prepreg brings its own. */
export const resinInPart = defineFigure<ResinInPart>('resin_in_part', (bench, key) => {
  const all = key === '' && bench.recipe.process?.kind === 'prepreg';
  const name = all ? known('') : resinName(bench, key);
  const items = bench.ask(stackResin);
  if (!isKnown(name) || !isKnown(items)) return missing(name, items);
  const own: LayerResinItem[] = [];
  let total = 0;
  for (const item of items.value) {
    if (!all && item.resin !== name.value) continue;
    own.push(item);
    total += item.mass;
  }
  return known({ total, items: own }, reason('computed', 'resin of all layers', { reasons: reasonsOf(name, items) }));
});

/** Resin that is thrown away with the consumables. */
export interface ResinElsewhere {
  /** kg */
  readonly total: number;
  readonly items: readonly ElsewhereItem[];
}

export interface ElsewhereItem {
  readonly what: 'peel' | 'mesh' | 'tubes' | 'pot' | 'sheets';
  readonly material?: string;
  /** path of the step */
  readonly path: string;
  /** kg */
  readonly mass: number;
}

/** Resin in peel ply, mesh, lines, trap and pot. It comes from the pot of the process resin. */
export const resinElsewhere = defineFigure<ResinElsewhere>('resin_elsewhere', (bench, key) => {
  const name = resinName(bench, key);
  const steps = bench.ask(processSteps);
  if (!isKnown(name) || !isKnown(steps)) return missing(name, steps);
  const { process } = bench.recipe;
  if (name.value !== process?.resin || process.kind === 'prepreg') return nowhereElse;
  const each: Figure<ElsewhereItem>[] = [];
  for (const step of steps.value) {
    const soaked = soaks(bench, step, name.value, process.kind === 'infusion');
    if (soaked !== undefined) each.push(soaked);
  }
  const items = allKnown(each);
  if (!isKnown(items)) return items;
  let total = 0;
  for (const { mass } of items.value) total += mass;
  return known(
    { total, items: items.value },
    reason('computed', 'resin thrown away with consumables and pot', { reasons: items.reasons }),
  );
});

const nowhereElse = known<ResinElsewhere>({ total: 0, items: [] });

function soaks(bench: Bench, step: Step, resin: string, infused: boolean): Figure<ElsewhereItem> | undefined {
  switch (step.verb) {
    case 'peel':
      return sheet(bench, step, 'peel', PEEL_UPTAKE);
    case 'mesh':
      return sheet(bench, step, 'mesh', MESH_UPTAKE);
    case 'bleeder':
    case 'breather':
    case 'perforated':
      return takes(bench, step) ? sheet(bench, step, 'sheets', undefined) : undefined;
    case 'feed':
    case 'vent':
      return infused ? line(bench, step, resin) : undefined;
    case 'infuse':
      return leftInPot(bench, step);
    default:
      return undefined;
  }
}

function leftInPot(bench: Bench, { path }: Step): Figure<ElsewhereItem> {
  const mass = usual(bench, POT_RESIDUE);
  return isKnown(mass) ? knownBy({ what: 'pot', path, mass: mass.value }, mass.reasons) : mass;
}

const takes = (bench: Bench, step: Step): boolean => {
  const name = subject(step);
  return name !== undefined && bench.material(name)?.takes !== undefined;
};

function sheet(
  bench: Bench,
  step: Step,
  what: ElsewhereItem['what'],
  unsaid: Usual | undefined,
): Figure<ElsewhereItem> {
  const at = inRecipe(bench, step.path);
  const found = materialAt(bench, subject(step), text('the material of {step}', { step: step.verb }), at);
  if (!isKnown(found)) return found;
  const material = found.value;
  const uptake = material.takes === undefined && unsaid !== undefined ? usual(bench, unsaid) : siOf(uptakeOf(material));
  const area = bench.ask(sheetArea, step.path);
  if (!isKnown(area) || !isKnown(uptake)) return missing(area, uptake);
  const mass = sheetUptake(area.value, uptake.value);
  if (typeof mass !== 'number') return worked<ElsewhereItem>(mass, '', { at });
  const words = text('{material} keeps {mass}', { material: material.name, mass: quantity(mass, MASS) });
  return known(
    { what, material: material.name, path: step.path, mass },
    reason('computed', words, { at, reasons: reasonsOf(area, uptake) }),
  );
}

function uptakeOf(material: MaterialFacts): Figure<Quantity> {
  const what = text('the resin that {material} takes', { material: material.name });
  return factOf(material.takes, what, factPlace(material, 'takes'));
}

/** A feed and its tube to the pot stand full; so does a vent once the front has reached it, without its tube to the trap. */
function line(bench: Bench, step: Step, resin: string): Figure<ElsewhereItem> {
  const at = inRecipe(bench, step.path);
  const name = step.name ?? step.verb;
  const found = materialAt(bench, step.material ?? subject(step), text('the tube of {step}', { step: name }), at);
  const liquid = materialAt(bench, resin, 'the resin', at);
  const length = bench.ask(lineLength, step.path);
  const lead = step.verb === 'feed' ? usual(bench, TUBE_LENGTH) : noLead;
  if (!isKnown(found) || !isKnown(liquid) || !isKnown(length) || !isKnown(lead))
    return missing(found, liquid, length, lead);
  const tube = found.value;
  const bore = siOf(factOf(tube.bore, text('the bore of {tube}', { tube: tube.name }), factPlace(tube, 'bore')));
  const density = densityOf(liquid.value);
  if (!isKnown(bore) || !isKnown(density)) return missing(bore, density);
  const mass = resinInTube(bore.value, length.value + lead.value, density.value);
  if (typeof mass !== 'number') return worked<ElsewhereItem>(mass, '', { at });
  return known(
    { what: 'tubes', material: tube.name, path: step.path, mass },
    reason('computed', text('{name} holds {mass}', { name, mass: quantity(mass, MASS) }), {
      at,
      reasons: reasonsOf(found, liquid, length, lead, bore, density),
    }),
  );
}

const noLead = known(0);

const PLACES: Readonly<Record<ResinItem['what'], keyof ResinNeeds>> = {
  cloth: 'laminate',
  coat: 'laminate',
  bed: 'laminate',
  holes: 'coreCuts',
  cuts: 'coreCuts',
  grooves: 'coreCuts',
  surface: 'coreSurface',
};
const ELSEWHERE: Readonly<Record<ElsewhereItem['what'], keyof ResinNeeds>> = {
  peel: 'peel',
  sheets: 'peel',
  mesh: 'mesh',
  tubes: 'tubes',
  pot: 'pot',
};

export interface ResinToMix {
  /** kg to weigh out, with the allowance */
  readonly total: number;
  readonly needs: ResinNeeds;
  readonly allowance: number;
}

/** Resin to mix for one part, with an allowance that is held back. */
export const resinToMix = defineFigure<ResinToMix>('resin_to_mix', (bench, key) => {
  if (key === '' && bench.recipe.process?.kind === 'prepreg') {
    return known(
      { total: 0, needs: noNeeds(), allowance: 0 },
      reason('computed', 'the prepreg brings its resin; none is mixed'),
    );
  }
  const inside = bench.ask(resinInPart, key);
  const outside = bench.ask(resinElsewhere, key);
  const allowance = usual(bench, MIX_ALLOWANCE);
  if (!isKnown(inside) || !isKnown(outside) || !isKnown(allowance)) return missing(inside, outside, allowance);
  const needs = noNeeds();
  for (const item of inside.value.items) needs[PLACES[item.what]] += item.mass;
  for (const item of outside.value.items) needs[ELSEWHERE[item.what]] += item.mass;
  const mix = toMixFormula(needs, allowance.value);
  if ('problem' in mix) return cannot(reason('computed', mix.problem));
  const words = text('{needed} needed and {allowance} held back', {
    needed: quantity(mix.needed, MASS),
    allowance: quantity(mix.allowance, MASS),
  });
  return known(
    { total: mix.total, needs, allowance: mix.allowance },
    reason('computed', words, { reasons: reasonsOf(inside, outside, allowance) }),
  );
});

function noNeeds(): { -readonly [K in keyof ResinNeeds]: number } {
  return { laminate: 0, coreCuts: 0, coreSurface: 0, peel: 0, mesh: 0, tubes: 0, pot: 0 };
}
