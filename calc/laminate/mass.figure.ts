import { layerArea, layerClothArea } from '../cloth/area.figure.ts';
import { coreCuts, coreVolume, insertVolume } from '../core/core.figure.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  factOf,
  ifKnown,
  isKnown,
  known,
  knownBy,
  missing,
  quantity,
  reason,
  reasonsOf,
  siOf,
  text,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { given, positive } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { AREAL_WEIGHT, MASS } from '../quantity/index.ts';
import { surfaceUptake } from '../resin/core-cuts.ts';
import { BED_THICKNESS, CORE_SURFACE } from '../resin/uptake-defaults.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import {
  densityOf,
  factPlace,
  layerArealWeight,
  layerMaterial,
  layerResinDensity,
  layerResinName,
  layerWeightFraction,
  materialAt,
} from './fraction.figure.ts';
import { resinForFibre } from './fraction.ts';
import { coatArealWeight } from './thickness.figure.ts';

/** Mass of a layer before any resin, kg: fibre, core, insert. A coat has none. */
export const layerDryMass = defineFigure<number>('layer_dry_mass', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  switch (laid.value.layer.kind) {
    case 'coat':
      return noMass;
    case 'core':
      return ofVolume(bench, key, bench.ask(coreVolume, key));
    case 'insert':
      return ofVolume(bench, key, bench.ask(insertVolume, key));
    default:
      return ofFibre(bench, key);
  }
});

const noMass = known(0);

function ofVolume(bench: Bench, key: string, volume: Figure<number>): Figure<number> {
  return whenKnown({ volume, material: bench.ask(layerMaterial, key) }, (v, reasons) =>
    ifKnown(densityOf(v.material), (density, more) => {
      const mass = given(
        [positive(text('the density of {material}', { material: v.material.name }), density)],
        () => v.volume * density,
      );
      return worked(mass, 'volume times density', { reasons: [...reasons, ...more] });
    }),
  );
}

function ofFibre(bench: Bench, key: string): Figure<number> {
  const area = bench.ask(layerClothArea, key);
  const w = bench.ask(layerArealWeight, key);
  if (!isKnown(area) || !isKnown(w)) return missing(area, w);
  const words = text('area times {weight}', { weight: quantity(w.value, AREAL_WEIGHT) });
  return known(area.value * w.value, reason('computed', words, { reasons: reasonsOf(area, w) }));
}

/** Where the resin of a layer sits. `what` is fit for a sheet. */
export interface ResinItem {
  readonly what: 'cloth' | 'coat' | 'holes' | 'cuts' | 'grooves' | 'surface' | 'bed';
  /** name of the resin, gelcoat or paste */
  readonly resin: string;
  /** kg */
  readonly mass: number;
}

export interface LayerResin {
  /** kg */
  readonly total: number;
  readonly items: readonly ResinItem[];
}

const sumOf = (items: readonly ResinItem[]): LayerResin => ({
  total: items.reduce((sum, item) => sum + item.mass, 0),
  items,
});

/** Resin in a layer: in its cloth, its film, its holes, cuts, grooves and cut cells, and the paste that it is bedded in. */
export const layerResin = defineFigure<LayerResin>('layer_resin', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  switch (laid.value.layer.kind) {
    case 'coat':
      return inCoat(bench, laid.value);
    case 'core':
      return withBed(bench, laid.value, inCore(bench, laid.value));
    case 'insert':
      return withBed(bench, laid.value, inFaces(bench, laid.value));
    default:
      return inCloth(bench, laid.value);
  }
});

const withBed = (bench: Bench, laid: LaidLayer, own: Figure<readonly ResinItem[]>): Figure<LayerResin> =>
  whenKnown({ own, bed: inBed(bench, laid) }, ({ own, bed }, reasons) =>
    knownBy(sumOf([...own, ...bed].filter((item) => item.mass > 0)), reasons),
  );

function inCoat(bench: Bench, { key }: LaidLayer): Figure<LayerResin> {
  const inputs = {
    area: bench.ask(layerArea, key),
    w: bench.ask(coatArealWeight, key),
    resin: bench.ask(layerResinName, key),
  };
  return whenKnown(inputs, ({ area, w, resin }, reasons) =>
    known(
      sumOf([{ what: 'coat', resin, mass: area * w }]),
      reason('computed', text('{weight} on the area', { weight: quantity(w, AREAL_WEIGHT) }), { reasons }),
    ),
  );
}

function inCloth(bench: Bench, { key }: LaidLayer): Figure<LayerResin> {
  const dry = bench.ask(layerDryMass, key);
  const fraction = bench.ask(layerWeightFraction, key);
  const resin = bench.ask(layerResinName, key);
  if (!isKnown(dry) || !isKnown(fraction) || !isKnown(resin)) return missing(dry, fraction, resin);
  const mass = resinForFibre(dry.value, fraction.value);
  if (typeof mass !== 'number') return worked<LayerResin>(mass, '');
  return known(
    sumOf([{ what: 'cloth', resin: resin.value, mass }]),
    reason('computed', 'fibre times (1 - x) / x, x the fibre fraction by weight', {
      reasons: reasonsOf(dry, fraction, resin),
    }),
  );
}

/** Prepreg laminates have no liquid resin that could run into a core. */
const isWet = (bench: Bench): boolean => bench.recipe.process?.kind !== 'prepreg';

function inCore(bench: Bench, core: LaidLayer): Figure<readonly ResinItem[]> {
  if (!isWet(bench)) return known([]);
  const { key } = core;
  const inputs = {
    cuts: bench.ask(coreCuts, key),
    resin: bench.ask(layerResinName, key),
    density: bench.ask(layerResinDensity, key),
    faces: inFaces(bench, core),
  };
  return whenKnown(inputs, ({ cuts, resin, density, faces }, reasons) => {
    const filled = (what: ResinItem['what'], volume: number): ResinItem => ({ what, resin, mass: volume * density });
    const items = [filled('holes', cuts.holes.volume), filled('cuts', cuts.kerfs), filled('grooves', cuts.grooveRoom)];
    return known(
      [...items, ...faces],
      reason('computed', 'holes, cuts and free room in grooves filled with resin', { reasons }),
    );
  });
}

/** Cut cells: cores take the usual amount if they do not say, inserts none. Sealed faces take none. */
function inFaces(bench: Bench, laid: LaidLayer): Figure<readonly ResinItem[]> {
  if (laid.layer.sealed === true || !isWet(bench)) return known([]);
  return ifKnown(bench.ask(layerMaterial, laid.key), (material) => {
    if (material.surface === undefined && laid.layer.kind === 'insert') return known([]);
    const at = factPlace(material, 'surface');
    const uptake =
      material.surface === undefined
        ? usual(bench, CORE_SURFACE)
        : siOf(
            factOf(
              material.surface,
              text('the resin that a face of {material} takes', { material: material.name }),
              at,
            ),
          );
    return whenKnown(
      { uptake, area: bench.ask(layerArea, laid.key), resin: bench.ask(layerResinName, laid.key) },
      (v, reasons) => {
        const mass = surfaceUptake(v.area, v.uptake);
        if (typeof mass !== 'number') return worked<readonly ResinItem[]>(mass, '', { at });
        return known(
          [{ what: 'surface' as const, resin: v.resin, mass }],
          reason('computed', 'cut cells of two faces', { reasons }),
        );
      },
    );
  });
}

function inBed(bench: Bench, laid: LaidLayer): Figure<readonly ResinItem[]> {
  const { bedded } = laid.layer;
  if (bedded === undefined) return known([]);
  const at = inRecipe(bench, laid.path);
  return whenKnown(
    { area: bench.ask(layerArea, laid.key), paste: materialAt(bench, bedded.material, 'the paste', at) },
    ({ area, paste }, reasons) => {
      const weight =
        bedded.amount !== undefined
          ? known(
              bedded.amount.si,
              reason('typed', text('{amount} of {paste}', { amount: bedded.amount, paste: paste.name }), { at }),
            )
          : whenKnown(
              { bed: usual(bench, BED_THICKNESS), density: pasteDensity(bench, paste.name) },
              ({ bed, density }, more) => knownBy(bed * density, more),
            );
      return ifKnown(weight, (weight, more) =>
        known(
          [{ what: 'bed' as const, resin: paste.name, mass: area * weight }],
          reason('computed', 'paste under the layer', { reasons: [...reasons, ...more] }),
        ),
      );
    },
  );
}

/** A paste made of a resin has about the density of that resin where none is given. */
export function pasteDensity(bench: Bench, name: string): Figure<number> {
  return ifKnown(materialAt(bench, name, 'the paste', { entry: `material/${name}`, path: '' }), (paste) => {
    if (paste.density !== undefined || paste.madeFrom === undefined) return densityOf(paste);
    return ifKnown(
      factOf(paste.madeFrom, text('what {name} is made from', { name }), factPlace(paste, 'from')),
      (from) => ifKnown(materialAt(bench, from, 'the resin', factPlace(paste, 'from')), (base) => densityOf(base)),
    );
  });
}

/** Mass of a layer in the finished part, kg. */
export const layerMass = defineFigure<number>('layer_mass', (bench, key) => {
  const dry = bench.ask(layerDryMass, key);
  const resin = bench.ask(layerResin, key);
  if (!isKnown(dry) || !isKnown(resin)) return missing(dry, resin);
  const { total } = resin.value;
  const words = text('{dry} dry and {resin} of resin', {
    dry: quantity(dry.value, MASS),
    resin: quantity(total, MASS),
  });
  return known(dry.value + total, reason('computed', words, { reasons: reasonsOf(dry, resin) }));
});

/** A sum over all layers. */
export function overLayers(bench: Bench, of: (laid: LaidLayer) => Figure<number>, how: string): Figure<number> {
  return ifKnown(bench.ask(laidStack), (stack) => {
    if (stack.layers.length === 0)
      return cannot(
        reason('typed', 'the stack has no layers', { at: inRecipe(bench, bench.recipe.stack?.path ?? '') }),
      );
    return ifKnown(allKnown(stack.layers.map((laid) => of(laid))), (each, reasons) =>
      known(
        each.reduce((sum, x) => sum + x, 0),
        reason('computed', how, { reasons }),
      ),
    );
  });
}

/** Mass of the part, kg, before trimming away what runs past its edge. */
export const mass = defineFigure<number>('mass', (bench) =>
  overLayers(bench, (laid) => bench.ask(layerMass, laid.key), 'sum of all layers'),
);

/** Mass of cloth, core and inserts without resin, kg. */
export const dryMass = defineFigure<number>('dry_mass', (bench) =>
  overLayers(bench, (laid) => bench.ask(layerDryMass, laid.key), 'sum of all layers, dry'),
);

/** Share of a layer in the mass of the part. */
export const layerShare = defineFigure<number>('layer_share', (bench, key) =>
  whenKnown({ own: bench.ask(layerMass, key), all: bench.ask(mass) }, ({ own, all }, reasons) =>
    worked(
      given([positive('the mass of the part', all)], () => own / all),
      'mass of the layer over that of the part',
      { reasons },
    ),
  ),
);
