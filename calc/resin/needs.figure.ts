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
  ifKnown,
  known,
  knownBy,
  type MaterialFacts,
  quantity,
  reason,
  siOf,
  text,
  typed,
  type Usual,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { densityOf, factPlace, materialAt } from '../laminate/fraction.figure.ts';
import { layerResin, type ResinItem } from '../laminate/mass.figure.ts';
import type { Step } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { subject } from '../plan/reading.ts';
import { MASS } from '../quantity/index.ts';
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
const stackResin = defineFigure<readonly LayerResinItem[]>('stack_resin', (bench) =>
  ifKnown(bench.ask(laidStack), (stack) =>
    ifKnown(allKnown(stack.layers.map((laid) => bench.ask(layerResin, laid.key))), (each, reasons) =>
      knownBy(
        each.flatMap((resin, i) => resin.items.map((item) => ({ ...item, layer: stack.layers[i]?.key ?? '' }))),
        reasons,
      ),
    ),
  ),
);

/** The resin that a figure is asked for: by its name, or that of the process where none is named. */
export function resinName(bench: Bench, key: string): Figure<string> {
  if (key !== '') return known(key);
  const { process } = bench.recipe;
  return typed(process?.resin, 'the resin of the process', inRecipe(bench, process?.path ?? ''));
}

/** The material that a figure of a resin is about. */
export const resinMaterial = definePick<MaterialFacts>('resin_material', (bench, key) =>
  ifKnown(resinName(bench, key), (name) =>
    materialAt(bench, name, 'the resin', inRecipe(bench, `${bench.recipe.process?.path ?? ''}.resin`)),
  ),
);

/** Every resin, gelcoat and paste that the recipe mixes, the resin of the process first. */
export const resinsUsed = definePick<readonly string[]>('resins_used', (bench) =>
  ifKnown(bench.ask(stackResin), (items) => {
    const own = bench.recipe.process?.resin;
    const names = new Set([...(own === undefined ? [] : [own]), ...items.map((item) => item.resin)]);
    return known([...names].filter((name) => bench.material(name)?.kind !== 'prepreg'));
  }),
);

export interface ResinInPart {
  /** kg */
  readonly total: number;
  readonly items: readonly LayerResinItem[];
}

/** Resin that stays in the part: of the process, or of the name that is the key; all of it where prepreg brings its own. */
export const resinInPart = defineFigure<ResinInPart>('resin_in_part', (bench, key) => {
  const all = key === '' && bench.recipe.process?.kind === 'prepreg';
  return whenKnown(
    { name: all ? known('') : resinName(bench, key), items: bench.ask(stackResin) },
    ({ name, items }, reasons) => {
      const own = items.filter((item) => all || item.resin === name);
      const total = own.reduce((sum, item) => sum + item.mass, 0);
      return known({ total, items: own }, reason('computed', 'resin of all layers', { reasons }));
    },
  );
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
export const resinElsewhere = defineFigure<ResinElsewhere>('resin_elsewhere', (bench, key) =>
  whenKnown({ name: resinName(bench, key), steps: bench.ask(processSteps) }, ({ name, steps }) => {
    const { process } = bench.recipe;
    if (name !== process?.resin || process.kind === 'prepreg') return known({ total: 0, items: [] });
    const infused = process.kind === 'infusion';
    const items = steps.flatMap((step) => soaks(bench, step, name, infused));
    return ifKnown(allKnown(items), (items, reasons) => {
      const total = items.reduce((sum, item) => sum + item.mass, 0);
      return known({ total, items }, reason('computed', 'resin thrown away with consumables and pot', { reasons }));
    });
  }),
);

function soaks(bench: Bench, step: Step, resin: string, infused: boolean): Figure<ElsewhereItem>[] {
  switch (step.verb) {
    case 'peel':
      return [sheet(bench, step, 'peel', PEEL_UPTAKE)];
    case 'mesh':
      return [sheet(bench, step, 'mesh', MESH_UPTAKE)];
    case 'bleeder':
    case 'breather':
    case 'perforated':
      return takes(bench, step) ? [sheet(bench, step, 'sheets', undefined)] : [];
    case 'feed':
    case 'vent':
      return infused ? [line(bench, step, resin)] : [];
    case 'infuse':
      return [
        ifKnown(usual(bench, POT_RESIDUE), (mass, reasons) =>
          knownBy({ what: 'pot' as const, path: step.path, mass }, reasons),
        ),
      ];
    default:
      return [];
  }
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
  return ifKnown(
    materialAt(bench, subject(step), text('the material of {step}', { step: step.verb }), at),
    (material) => {
      const uptake =
        material.takes === undefined && unsaid !== undefined
          ? usual(bench, unsaid)
          : siOf(
              factOf(
                material.takes,
                text('the resin that {material} takes', { material: material.name }),
                factPlace(material, 'takes'),
              ),
            );
      return whenKnown({ area: bench.ask(sheetArea, step.path), uptake }, (v, reasons) => {
        const mass = sheetUptake(v.area, v.uptake);
        if (typeof mass !== 'number') return worked<ElsewhereItem>(mass, '', { at });
        const words = text('{material} keeps {mass}', { material: material.name, mass: quantity(mass, MASS) });
        return known(
          { what, material: material.name, path: step.path, mass },
          reason('computed', words, { at, reasons }),
        );
      });
    },
  );
}

/** A feed and its tube to the pot stand full; so does a vent once the front has reached it, without its tube to the trap. */
function line(bench: Bench, step: Step, resin: string): Figure<ElsewhereItem> {
  const at = inRecipe(bench, step.path);
  const inputs = {
    tube: materialAt(
      bench,
      step.material ?? subject(step),
      text('the tube of {step}', { step: step.name ?? step.verb }),
      at,
    ),
    resin: materialAt(bench, resin, 'the resin', at),
    length: bench.ask(lineLength, step.path),
    lead: step.verb === 'feed' ? usual(bench, TUBE_LENGTH) : known(0),
  };
  return whenKnown(inputs, ({ tube, resin: liquid, length, lead }, reasons) => {
    const bore = siOf(factOf(tube.bore, text('the bore of {tube}', { tube: tube.name }), factPlace(tube, 'bore')));
    return whenKnown({ bore, density: densityOf(liquid) }, (v, more) => {
      const mass = resinInTube(v.bore, length + lead, v.density);
      if (typeof mass !== 'number') return worked<ElsewhereItem>(mass, '', { at });
      const words = text('{name} holds {mass}', { name: step.name ?? step.verb, mass: quantity(mass, MASS) });
      return known(
        { what: 'tubes' as const, material: tube.name, path: step.path, mass },
        reason('computed', words, { at, reasons: [...reasons, ...more] }),
      );
    });
  });
}

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
  return whenKnown(
    {
      inside: bench.ask(resinInPart, key),
      outside: bench.ask(resinElsewhere, key),
      allowance: usual(bench, MIX_ALLOWANCE),
    },
    (v, reasons) => {
      const needs = noNeeds();
      for (const item of v.inside.items) needs[PLACES[item.what]] += item.mass;
      for (const item of v.outside.items) needs[ELSEWHERE[item.what]] += item.mass;
      const mix = toMixFormula(needs, v.allowance);
      if ('problem' in mix) return cannot(reason('computed', mix.problem));
      return known(
        { total: mix.total, needs, allowance: mix.allowance },
        reason(
          'computed',
          text('{needed} needed and {allowance} held back', {
            needed: quantity(mix.needed, MASS),
            allowance: quantity(mix.allowance, MASS),
          }),
          { reasons },
        ),
      );
    },
  );
});

function noNeeds(): { -readonly [K in keyof ResinNeeds]: number } {
  return { laminate: 0, coreCuts: 0, coreSurface: 0, peel: 0, mesh: 0, tubes: 0, pot: 0 };
}
