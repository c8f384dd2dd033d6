import {
  type Bench,
  cannot,
  defineFigure,
  definePick,
  type Figure,
  factOf,
  ifKnown,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  missing,
  reason,
  reasonsOf,
  siOf,
  text,
  typed,
  type Words,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { onceFor } from '../kept.ts';
import type { Cloth, Fraction, Place, ProcessKind } from '../model/index.ts';
import { UNKNOWN } from '../model/index.ts';
import type { Outcome } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { layPlan } from '../plan/lay.figure.ts';
import { amountOf, firstClause, flat } from '../plan/reading.ts';
import { NUMBER } from '../quantity/index.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { type Densities, fibreByVolume, fibreByWeight } from './fraction.ts';
import { FRACTION_DEFAULTS, PROCESS_WORDS } from './fraction-defaults.ts';

/** A material that a line names, or that it is not among the materials. */
export function materialAt(bench: Bench, name: string | undefined, what: Words, at: Place): Figure<MaterialFacts> {
  const material = name === undefined ? undefined : bench.material(name);
  if (material !== undefined) return known(material);
  return ifKnown(typed(name, what, at), (name) =>
    cannot(reason('typed', text('nothing among the materials is called {name}', { name }), { at })),
  );
}

/** The fact of a material with its own place, as a figure. */
export const factPlace = (material: MaterialFacts, path: string): Place => ({ entry: material.entry, path });

/** Kept with the entry: every recipe asks. */
export const densityOf = onceFor(
  (material: MaterialFacts): Figure<number> =>
    siOf(
      factOf(
        material.density,
        text('the density of {material}', { material: material.name }),
        factPlace(material, 'density'),
      ),
    ),
);

/** The material of a layer. */
export const layerMaterial = definePick<MaterialFacts>('layer_material', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  const { layer, name, path } = laid.value;
  const material = layer.material === undefined ? undefined : bench.material(layer.material);
  // only what is missing needs words
  if (material !== undefined) return known(material);
  return materialAt(bench, layer.material, text('the material of {layer}', { layer: name }), inRecipe(bench, path));
});

/** The cloth of a layer. */
export const layerCloth = definePick<Cloth>('layer_cloth', (bench, key) => {
  const found = bench.ask(layerMaterial, key);
  if (!isKnown(found)) return found;
  const material = found.value;
  return factOf(
    material.cloth,
    text('what {material} is woven or stitched of', { material: material.name }),
    factPlace(material, 'layers'),
  );
});

/** Fibre in a layer, kg/m2. */
export const layerArealWeight = defineFigure<number>('layer_areal_weight', (bench, key) => {
  const cloth = bench.ask(layerCloth, key);
  if (!isKnown(cloth)) return cloth;
  let sum = 0;
  for (const sheet of cloth.value.layers) sum += sheet.arealWeight.si;
  return knownBy(sum, cloth.reasons);
});

/** Density of the fibre of a layer, kg/m3. */
export const layerFibreDensity = defineFigure<number>('layer_fibre_density', (bench, key) => {
  const found = bench.ask(layerMaterial, key);
  if (!isKnown(found)) return found;
  const material = found.value;
  const at = factPlace(material, 'fibre');
  const fibre = factOf(material.fibre, text('the fibre of {material}', { material: material.name }), at);
  if (!isKnown(fibre)) return fibre;
  const entry = materialAt(bench, fibre.value, 'the fibre', at);
  if (!isKnown(entry)) return entry;
  const density = densityOf(entry.value);
  return isKnown(density) ? knownBy(density.value, reasonsOf(density, fibre)) : density;
});

/** The resin of a layer: named on its line, on the step that lays it, or for the whole process; a prepreg brings its own. */
export const layerResinName = definePick<string>('layer_resin_name', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), material: bench.ask(layerMaterial, key) }, ({ laid, material }) => {
    const at = inRecipe(bench, laid.path);
    if (material.kind === 'prepreg' || laid.layer.kind === 'coat')
      return known(material.name, reason('typed', text('{name}', { name: material.name }), { at }));
    if (laid.layer.wetResin !== undefined)
      return typed(laid.layer.wetResin, text('the resin of {layer}', { layer: laid.name }), at);
    const plan = bench.ask(layPlan);
    const step = isKnown(plan) ? plan.value.stepsOf.get(key)?.find((s) => s.lay?.resin !== undefined) : undefined;
    if (step !== undefined)
      return typed(step.lay?.resin, text('the resin of {layer}', { layer: laid.name }), inRecipe(bench, step.path));
    const { process } = bench.recipe;
    return typed(process?.resin, 'the resin of the process', inRecipe(bench, process?.path ?? ''));
  }),
);

/** Density of the cured resin of a layer, kg/m3; that of the liquid is taken, which is a few per cent lower. */
export const layerResinDensity = defineFigure<number>('layer_resin_density', (bench, key) =>
  whenKnown({ name: bench.ask(layerResinName, key), laid: bench.ask(laidLayer, key) }, ({ name, laid }) =>
    ifKnown(materialAt(bench, name, 'the resin', inRecipe(bench, laid.path)), (resin) => densityOf(resin)),
  ),
);

/** A fraction as somebody said it, or as the trade has it. */
interface SaidFraction {
  /** share of fibre */
  readonly fibre: number;
  readonly basis: 'by weight' | 'by volume';
}

function said(fraction: Fraction, what: Words, at: Place, source?: string): Figure<SaidFraction> {
  return ifKnown(typed(fraction.amount, what, at, source), (amount, reasons) => {
    const basis = amount.basis;
    if (basis !== 'by weight' && basis !== 'by volume') {
      return cannot(
        reason('typed', text('{what} is {amount}, but not said by weight or by volume', { what, amount }), { at }),
      );
    }
    return knownBy({ fibre: fraction.of === 'fibre' ? amount.si : 1 - amount.si, basis }, reasons);
  });
}

/** `lay skin, fibre 30 % by weight` */
function onStep(bench: Bench, key: string): { readonly fraction: Fraction; readonly path: string } | undefined {
  const plan = bench.ask(layPlan);
  for (const step of isKnown(plan) ? (plan.value.stepsOf.get(key) ?? []) : []) {
    for (const part of ['fibre', 'resin'] as const) {
      const clause = firstClause(step, part);
      const amount = clause === undefined ? undefined : amountOf(flat(clause), NUMBER);
      if (clause !== undefined && amount !== undefined) return { fraction: { of: part, amount }, path: clause.path };
    }
  }
  return undefined;
}

/** In the order of the notation: the ply, the step that lays it, the cloth, the table of the trade. */
const saidFraction = defineFigure<SaidFraction>('said_fraction', (bench, key) => {
  const found = bench.ask(laidLayer, key);
  const material = bench.ask(layerMaterial, key);
  if (!isKnown(found) || !isKnown(material)) return missing(found, material);
  const laid = found.value;
  const { fraction } = laid.layer;
  if (fraction !== undefined) return said(fraction, shareIn(laid), inRecipe(bench, laid.path));
  const step = onStep(bench, key);
  if (step !== undefined)
    return said(step.fraction, text('{what}, as laid', { what: shareIn(laid) }), inRecipe(bench, step.path));
  const kind = bench.recipe.process?.kind;
  const own = ofMaterial(material.value, kind);
  if (own !== undefined) return own;
  return ifKnown(bench.ask(layerCloth, key), (cloth) => ofTrade(bench, cloth, kind, laid));
});

const shareIn = ({ name }: LaidLayer) => text('the share of fibre or resin in {layer}', { layer: name });

/**
 * The fraction of a material that counts in a process: the one that names it before the one that names none. While no process is
 * written yet it is the first, because a stack is typed before its process.
 */
export function fractionFact(
  { fractions: facts = [] }: Pick<MaterialFacts, 'fractions'>,
  kind: ProcessKind | undefined,
): NonNullable<MaterialFacts['fractions']>[number] | undefined {
  if (kind === undefined) return facts[0];
  const fits = (process: string | undefined) => process === undefined || PROCESS_WORDS[kind].includes(process);
  return (
    facts.find((f) => f.value !== UNKNOWN && f.value.process !== undefined && fits(f.value.process)) ??
    facts.find((f) => f.value === UNKNOWN || fits(f.value.process))
  );
}

function ofMaterial(material: MaterialFacts, kind: ProcessKind | undefined): Figure<SaidFraction> | undefined {
  const fact = fractionFact(material, kind);
  if (fact === undefined) return undefined;
  const what = text('the fraction of {material}', { material: material.name });
  return fact.value === UNKNOWN
    ? typed<SaidFraction>(UNKNOWN, what, fact.at)
    : said(fact.value, what, fact.at, fact.source);
}

function ofTrade(bench: Bench, cloth: Cloth, kind: ProcessKind | undefined, laid: LaidLayer): Figure<SaidFraction> {
  const at = inRecipe(bench, bench.recipe.process?.path ?? laid.path);
  return ifKnown(typed(kind, 'the kind of process (hand, bagged, infusion, prepreg)', at), (kind) => {
    const usual = FRACTION_DEFAULTS[kind][cloth.style];
    const words = text('usual fibre fraction by volume of {style} cloth, process {kind}: {fraction}', {
      style: cloth.style,
      kind,
      fraction: { si: usual.byVolume, dimension: NUMBER },
    });
    return known(
      { fibre: usual.byVolume, basis: 'by volume' as const },
      reason('trade', words, { source: usual.source }),
    );
  });
}

function densities(bench: Bench, key: string): Figure<Densities> {
  const fibre = bench.ask(layerFibreDensity, key);
  const resin = bench.ask(layerResinDensity, key);
  if (!isKnown(fibre) || !isKnown(resin)) return missing(fibre, resin);
  return knownBy({ fibre: fibre.value, resin: resin.value }, reasonsOf(fibre, resin));
}

/** Fibre fraction by volume alone: said so, it needs no density of the resin, and so the thickness needs none. */
export const layerVolumeFraction = defineFigure<number>('layer_volume_fraction', (bench, key) => {
  const share = bench.ask(saidFraction, key);
  if (!isKnown(share)) return share;
  const { fibre, basis } = share.value;
  if (basis === 'by volume') return worked(asSaid(fibre), 'fibre fraction by volume', { reasons: share.reasons });
  const both = densities(bench, key);
  if (!isKnown(both)) return both;
  return worked(fibreByVolume(fibre, both.value), 'from weight to volume with the densities of fibre and resin', {
    reasons: reasonsOf(share, both),
  });
});

const asSaid = (fibre: number): Outcome =>
  fibre > 0 && fibre < 1 ? fibre : { problem: 'the fibre fraction must lie between 0 and 100 %' };

export const layerWeightFraction = defineFigure<number>('layer_weight_fraction', (bench, key) => {
  const share = bench.ask(saidFraction, key);
  if (!isKnown(share)) return share;
  const { fibre, basis } = share.value;
  if (basis === 'by weight') return worked(asSaid(fibre), 'fibre fraction by weight', { reasons: share.reasons });
  const both = densities(bench, key);
  if (!isKnown(both)) return both;
  return worked(fibreByWeight(fibre, both.value), 'from volume to weight with the densities of fibre and resin', {
    reasons: reasonsOf(share, both),
  });
});

export interface LayerFraction {
  readonly byVolume: number;
  readonly byWeight: number;
}

/** How much of a layer of cloth is fibre. */
export const layerFraction = defineFigure<LayerFraction>('layer_fraction', (bench, key) =>
  whenKnown(
    { byVolume: bench.ask(layerVolumeFraction, key), byWeight: bench.ask(layerWeightFraction, key) },
    ({ byVolume, byWeight }, reasons) => knownBy({ byVolume, byWeight }, reasons),
  ),
);
