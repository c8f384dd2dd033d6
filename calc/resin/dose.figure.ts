import { processSteps } from '../bag/bag.figure.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  factOf,
  ifKnown,
  isKnown,
  known,
  knownBy,
  type MaterialFacts,
  type Reason,
  reason,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { densityOf, factPlace, materialAt } from '../laminate/fraction.figure.ts';
import type { Amount, CatalystDose, Place, Step } from '../model/index.ts';
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
export const catalystDose = defineFigure<Dose | undefined>('catalyst_dose', (bench, key) =>
  ifKnown(bench.ask(resinMaterial, key), (resin) => {
    const strongest = typedDoses(bench, resin.name).reduce<TypedDose | undefined>(
      (most, dose) => (most === undefined || dose.amount.si > most.amount.si ? dose : most),
      undefined,
    );
    return doseOf(bench, resin, strongest);
  }),
);

/** The dose of a resin at one step (its path): as it is typed there, else that of the material. */
export function doseAt(bench: Bench, key: string, path: string): Figure<Dose | undefined> {
  return ifKnown(bench.ask(resinMaterial, key), (resin) => {
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
  });
}

function doseOf(bench: Bench, resin: MaterialFacts, said: TypedDose | undefined): Figure<Dose | undefined> {
  if (resin.catalyst === undefined) return known(undefined);
  return ifKnown(
    factOf(resin.catalyst, text('the catalyst of {resin}', { resin: resin.name }), factPlace(resin, 'catalyst')),
    (catalyst, reasons) => {
      const material = said?.material ?? catalyst.material;
      const at = said?.at ?? factPlace(resin, 'catalyst');
      return ifKnown(
        typed(said?.amount ?? catalyst.dose, text('the dose of {material}', { material }), at),
        (amount, more) => byWeight(bench, resin, { ...catalyst, material }, amount, at, [...more, ...reasons]),
      );
    },
  );
}

function byWeight(
  bench: Bench,
  resin: MaterialFacts,
  catalyst: CatalystDose,
  amount: Amount,
  at: Place,
  reasons: readonly Reason[],
): Figure<Dose> {
  if (amount.basis !== 'by volume') return knownBy({ material: catalyst.material, dose: amount.si }, reasons);
  return whenKnown(
    { liquid: materialAt(bench, catalyst.material, 'the catalyst', at), density: densityOf(resin) },
    ({ liquid, density }) =>
      ifKnown(densityOf(liquid), (own, more) => {
        const dose = weightDoseOf(amount.si, own, density);
        if (isImpossible(dose)) return worked<Dose>(dose, '', { at });
        return known(
          { material: catalyst.material, dose },
          reason('computed', 'by volume to by weight, with both densities', { reasons: [...more, ...reasons] }),
        );
      }),
  );
}

/** `lay gel, catalyst 2 % by weight`; `catalyse mekp_50 1.5 % by weight` */
function typedDose(bench: Bench, step: Step): TypedDose | undefined {
  const clause = firstClause(step, 'catalyst');
  const said = clause === undefined ? (step.verb === 'catalyse' ? head(step) : []) : flat(clause);
  const amount = amountOf(said, NUMBER);
  if (amount === undefined) return undefined;
  const material = said.flatMap((a) =>
    a.kind === 'word' && bench.material(a.word)?.kind === 'catalyst' ? [a.word] : [],
  )[0];
  return {
    amount,
    ...(material === undefined ? {} : { material }),
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

function typedDoses(bench: Bench, resin: string): readonly TypedDose[] {
  const steps = bench.ask(processSteps);
  return (isKnown(steps) ? steps.value : []).flatMap((step) => doseFor(bench, step, resin) ?? []);
}
