import { processSteps } from '../bag/bag.figure.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  factOf,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  missing,
  type Reason,
  reason,
  reasonsOf,
  text,
  typed,
  worked,
} from '../figure/index.ts';
import { densityOf, factPlace, materialAt } from '../laminate/fraction.figure.ts';
import type { Amount, Place, Step } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { amountOf, firstClause, flat, head } from '../plan/reading.ts';
import { NUMBER } from '../quantity/index.ts';
import { weightDoseOf } from './catalyst.ts';
import { resinMaterial } from './needs.figure.ts';
import { wettedAt } from './wetted.figure.ts';

/** A dose of catalyst by weight of the resin, and by what it was said. */
export interface Dose {
  readonly material: string;
  /** share by weight */
  readonly dose: number;
}

/** A dose as a step says it. */
interface TypedDose {
  readonly amount: Amount;
  /** catalyst that the step names; that of the resin where it names none */
  readonly material?: string;
  readonly at: Place;
}

/**
 * The dose of catalyst: typed on the steps that use this resin (the strongest of them), else that of the material.
 * Undefined for a resin that is mixed of parts.
 */
export const catalystDose = defineFigure<Dose | undefined>('catalyst_dose', (bench, key) => {
  const resin = bench.ask(resinMaterial, key);
  if (!isKnown(resin)) return resin;
  // most resins are mixed of parts
  if (resin.value.catalyst === undefined) return noDose;
  return doseOf(bench, resin.value, strongestDose(bench, resin.value.name));
});

const noDose = known(undefined);

/** The dose of a resin at one step (its path): as it is typed there, else that of the material. */
export function doseAt(bench: Bench, key: string, path: string): Figure<Dose | undefined> {
  const found = bench.ask(resinMaterial, key);
  if (!isKnown(found)) return found;
  const resin = found.value;
  if (resin.catalyst === undefined) return noDose;
  const asked = bench.ask(processSteps);
  const steps = isKnown(asked) ? asked.value : [];
  const at = steps.findIndex((each) => each.path === path);
  const step = steps[at];
  if (step === undefined) return doseOf(bench, resin, undefined);
  // what is stirred in by a line of its own is for the pot of the process
  const others = [...steps.slice(0, at).reverse(), ...steps.slice(at + 1)].filter(({ lay }) => lay === undefined);
  const said = [step, ...(step.lay === undefined ? others : [])]
    .map((each) => doseFor(bench, each, resin.name))
    .find((dose) => dose !== undefined);
  return doseOf(bench, resin, said);
}

function doseOf(bench: Bench, resin: MaterialFacts, said: TypedDose | undefined): Figure<Dose | undefined> {
  const place = factPlace(resin, 'catalyst');
  const catalyst = factOf(resin.catalyst, text('the catalyst of {resin}', { resin: resin.name }), place);
  if (!isKnown(catalyst)) return catalyst;
  const material = said?.material ?? catalyst.value.material;
  const at = said?.at ?? place;
  const amount = typed(said?.amount ?? catalyst.value.dose, text('the dose of {material}', { material }), at);
  if (!isKnown(amount)) return amount;
  return byWeight(bench, resin, material, amount.value, at, reasonsOf(amount, catalyst));
}

function byWeight(
  bench: Bench,
  resin: MaterialFacts,
  material: string,
  amount: Amount,
  at: Place,
  reasons: readonly Reason[],
): Figure<Dose> {
  if (amount.basis !== 'by volume') return knownBy({ material, dose: amount.si }, reasons);
  const liquid = materialAt(bench, material, 'the catalyst', at);
  const density = densityOf(resin);
  if (!isKnown(liquid) || !isKnown(density)) return missing(liquid, density);
  const own = densityOf(liquid.value);
  if (!isKnown(own)) return own;
  const dose = weightDoseOf(amount.si, own.value, density.value);
  if (isImpossible(dose)) return worked<Dose>(dose, '', { at });
  return known(
    { material, dose },
    reason('computed', 'by volume to by weight, with both densities', { reasons: [...own.reasons, ...reasons] }),
  );
}

/** `lay gel, catalyst 2 % by weight`; `catalyse mekp_50 1.5 % by weight` */
function typedDose(bench: Bench, step: Step): TypedDose | undefined {
  const clause = firstClause(step, 'catalyst');
  if (clause === undefined && step.verb !== 'catalyse') return undefined;
  const said = clause === undefined ? head(step) : flat(clause);
  const amount = amountOf(said, NUMBER);
  if (amount === undefined) return undefined;
  const named = said.find((a) => a.kind === 'word' && bench.material(a.word)?.kind === 'catalyst');
  return {
    amount,
    material: named?.kind === 'word' ? named.word : undefined,
    at: inRecipe(bench, clause?.path ?? step.path),
  };
}

/** The dose that a step says of a resin: that of its layers, else of what they are bedded in; what wets nothing is about the process. */
function doseFor(bench: Bench, step: Step, resin: string): TypedDose | undefined {
  const dose = typedDose(bench, step);
  if (dose === undefined) return undefined;
  const wetted = wettedAt(bench, step);
  const items = isKnown(wetted) ? wetted.value : [];
  const layers = items.filter(({ what }) => what !== 'bed');
  const meant = layers.length > 0 ? layers : items;
  if (meant.length === 0) return bench.recipe.process?.resin === resin ? dose : undefined;
  return meant.some((item) => item.resin === resin) ? dose : undefined;
}

function strongestDose(bench: Bench, resin: string): TypedDose | undefined {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return undefined;
  let most: TypedDose | undefined;
  for (const step of steps.value) {
    const dose = doseFor(bench, step, resin);
    if (dose !== undefined && (most === undefined || dose.amount.si > most.amount.si)) most = dose;
  }
  return most;
}
