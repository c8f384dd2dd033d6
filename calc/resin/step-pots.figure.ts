import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  reason,
  whenKnown,
} from '../figure/index.ts';
import { layerResin } from '../laminate/mass.figure.ts';
import type { Step } from '../model/index.ts';
import { layPlan } from '../plan/lay.figure.ts';
import { infusedResin, mixedFor } from './infused.figure.ts';
import { additions, type MixPart, mixOf } from './mix.figure.ts';
import { batches } from './pot.figure.ts';

/** A pot that is mixed for a step. */
export interface StepPot {
  readonly resin: string;
  /** how many pots alike, one after the other */
  readonly pots: number;
  /** kg in each, with hardener or catalyst */
  readonly mass: number;
  /** what goes into each, in the order it is poured; kg */
  readonly parts: readonly MixPart[];
}

/**
 * What is mixed for one step (its path is the key): for `infuse` the resin of the process, for a `lay` that wets its
 * layers what those take. The allowance is shared over the steps by mass, and so is what the consumables drink where
 * there is no infusion; of an infusion it is drunk from its own pot, and what was laid wet before is not mixed again.
 */
export const stepPots = defineFigure<readonly StepPot[]>('step_pots', (bench, path) =>
  whenKnown({ steps: bench.ask(processSteps), plan: bench.ask(layPlan) }, ({ steps, plan }, reasons) => {
    const step = steps.find((each) => each.path === path);
    if (step === undefined) return known([]);
    // a kit is joined dry on the bench; its resin comes when it is laid
    if (
      steps.some(({ verb, steps: inside }) => verb === 'kit' && inside?.includes(step)) &&
      step.lay?.resin === undefined
    )
      return known([]);
    const wanted = needsOf(
      bench,
      step,
      (plan.layersOf.get(path) ?? []).map(({ key }) => key),
    );
    return ifKnown(wanted, (wanted) =>
      ifKnown(allKnown([...wanted].map(([resin, mass]) => potsOf(bench, resin, mass))), (pots, why) =>
        known(
          pots,
          reason('computed', 'what the layers of the step take, and their share of the allowance', {
            reasons: [...reasons, ...why],
          }),
        ),
      ),
    );
  }),
);

/** kg in the part or, for an infusion, in all, by resin. */
function needsOf(bench: Bench, step: Step, layers: readonly string[]): Figure<ReadonlyMap<string, number>> {
  const { process } = bench.recipe;
  const own = process?.resin;
  if (step.verb === 'infuse' && own !== undefined) {
    return ifKnown(bench.ask(infusedResin), (mass) => known(new Map([[own, mass]])));
  }
  if (layers.length === 0) return known(new Map());
  return ifKnown(allKnown(layers.map((key) => bench.ask(layerResin, key))), (each) => {
    const sums = new Map<string, number>();
    for (const { resin, mass } of each.flatMap(({ items }) => items)) {
      // in an infusion the resin of the process comes later, and a prepreg brings its own
      const dry = process?.kind === 'infusion' && resin === own && step.lay?.resin === undefined;
      if (dry || bench.material(resin)?.kind === 'prepreg') continue;
      sums.set(resin, (sums.get(resin) ?? 0) + mass * mixedFor(bench, resin));
    }
    return known(sums);
  });
}

function potsOf(bench: Bench, resin: string, mass: number): Figure<StepPot> {
  const planned = bench.ask(batches, resin);
  // where it cannot be told how long a pot lives, one pot is said
  const most = isKnown(planned) ? planned.value.mass : mass;
  const pots = Math.max(1, Math.ceil(mass / most - 1e-9));
  return whenKnown(
    { split: mixOf(bench, resin, mass / pots), more: bench.ask(additions, resin) },
    ({ split, more }, reasons) => {
      const catalysed = bench.material(resin)?.catalyst !== undefined;
      const parts = poured(
        split.parts,
        more.map(({ material }) => material),
        catalysed,
      );
      return knownBy({ resin, pots, mass: split.total, parts }, reasons);
    },
  );
}

/**
 * What goes into a cup, in the order it is poured: pigment is stirred into the resin before anything cures it; a catalyst
 * comes last of all; filler thickens what is mixed of resin and hardener. Common practice.
 */
function poured(parts: readonly MixPart[], pigments: readonly string[], catalysed: boolean): readonly MixPart[] {
  const [resin, curing, ...others] = parts;
  if (resin === undefined || curing === undefined) return parts;
  const isPigment = ({ what }: MixPart): boolean => pigments.includes(what);
  const fillers = others.filter((part) => !isPigment(part));
  const before = others.filter(isPigment);
  return catalysed ? [resin, ...before, ...fillers, curing] : [resin, ...before, curing, ...fillers];
}
