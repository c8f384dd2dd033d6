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
} from '../figure/index.ts';
import { onceFor } from '../kept.ts';
import type { Step } from '../model/index.ts';
import { amountOf, clauseWith, countOf, flat, head, mixedName } from '../plan/reading.ts';
import { MASS } from '../quantity/index.ts';
import { doseAt } from './dose.figure.ts';
import { infusedResin, mixedFor } from './infused.figure.ts';
import { additions, type MixPart, type MixSplit, mixOf } from './mix.figure.ts';
import { potLimit } from './pot.figure.ts';
import { massOf, wettedAt } from './wetted.figure.ts';

/** What is mixed of one resin for a step. */
export interface StepNeed {
  readonly resin: string;
  /** kg, with its share of the allowance; without the catalyst, with the hardener */
  readonly mass: number;
  /** how many pots alike, one after the other */
  readonly pots: number;
}

/** A pot that is mixed for a step. */
export interface StepPot {
  readonly resin: string;
  /** how many pots alike, one after the other */
  readonly pots: number;
  /** kg in each, with hardener or catalyst */
  readonly mass: number;
  /** what goes into each, in the order it is poured; kg */
  readonly parts: readonly MixPart[];
  readonly split: MixSplit;
}

/** kg of a resin. */
interface Used {
  readonly resin: string;
  readonly mass: number;
}

/**
 * What one step uses up: `infuse` the resin of the process, a `lay` that wets its layers what those take. The allowance is
 * shared over the steps by mass, and so is what the consumables drink where there is no infusion; of an infusion it is
 * drunk from its own pot, and what was laid wet before is not mixed again.
 */
function usedBy(bench: Bench, step: Step): Figure<readonly Used[]> {
  const own = bench.recipe.process?.resin;
  if (step.verb === 'infuse' && own !== undefined)
    return ifKnown(bench.ask(infusedResin), (mass, reasons) => knownBy([{ resin: own, mass }], reasons));
  return ifKnown(wettedAt(bench, step), (items, reasons) => {
    const names = [...new Set(items.map(({ resin }) => resin))];
    const used = names.map((resin) => ({ resin, mass: massOf(items, resin) * mixedFor(bench, resin) }));
    return knownBy(
      used.filter(({ mass }) => mass > 0),
      reasons,
    );
  });
}

/**
 * What is mixed for one step (its path is the key). Where the recipe has a line for mixing, it is mixed there and nowhere
 * else: as much as is typed, or what the steps behind it use until it is mixed again.
 */
export const stepNeeds = defineFigure<readonly StepNeed[]>('step_needs', (bench, path) =>
  ifKnown(bench.ask(processSteps), (steps) => {
    const at = placesOf(steps).get(path) ?? -1;
    const step = steps[at];
    if (step === undefined) return known([]);
    const mixed = mixedBy(bench, step);
    if (mixed === undefined) {
      return ifKnown(usedBy(bench, step), (used, reasons) => {
        // most steps use nothing up
        if (used.length === 0) return knownBy([], reasons);
        const before = new Set(steps.slice(0, at).map((each) => mixedBy(bench, each)));
        return knownBy(
          used.flatMap(({ resin, mass }) => (before.has(resin) ? [] : [inPots(bench, resin, mass)])),
          reasons,
        );
      });
    }
    const rest = steps.slice(at + 1);
    const next = rest.findIndex((each) => mixedBy(bench, each) === mixed);
    const served = next < 0 ? rest : rest.slice(0, next);
    return ifKnown(allKnown(served.map((each) => usedBy(bench, each))), (each, reasons) => {
      const mass = amountOf(head(step), MASS)?.si ?? massOf(each.flat(), mixed);
      if (!(mass > 0)) return knownBy([], reasons);
      const clause = clauseWith(step, 'batches');
      const typed = clause === undefined ? undefined : countOf(flat(clause));
      const need = inPots(bench, mixed, mass);
      return knownBy([typed === undefined ? need : { ...need, pots: Math.max(1, typed) }], reasons);
    });
  }),
);

/** How many steps stand before each, by its path. */
const placesOf = onceFor((steps: readonly Step[]) => new Map(steps.map((step, at) => [step.path, at])));

/** The resin that a line mixes by itself: `mix 1.15 kg`. */
function mixedBy(bench: Bench, step: Step): string | undefined {
  if (step.verb !== 'mix') return undefined;
  const name = mixedName(step);
  return name !== undefined && bench.material(name) !== undefined ? name : bench.recipe.process?.resin;
}

function inPots(bench: Bench, resin: string, mass: number): StepNeed {
  const limit = bench.ask(potLimit, resin);
  // where it cannot be told how long a pot lives, one pot is said
  const most = isKnown(limit) ? limit.value.mass : mass;
  return { resin, mass, pots: Math.max(1, Math.ceil(mass / most - 1e-9)) };
}

/** What is mixed for one step (its path is the key), as it is weighed. */
export const stepPots = defineFigure<readonly StepPot[]>('step_pots', (bench, path) =>
  ifKnown(bench.ask(stepNeeds, path), (needs, reasons) =>
    ifKnown(allKnown(needs.map((need) => potsOf(bench, need, path))), (pots, why) =>
      known(
        pots,
        reason('computed', 'what the layers of the step take, and their share of the allowance', {
          reasons: [...reasons, ...why],
        }),
      ),
    ),
  ),
);

function potsOf(bench: Bench, { resin, mass, pots }: StepNeed, path: string): Figure<StepPot> {
  const mixed = mixOf(bench, resin, mass / pots, (name) => doseAt(bench, name, path));
  return ifKnown(mixed, (split, reasons) =>
    ifKnown(bench.ask(additions, resin), (more, why) => {
      const catalysed = bench.material(resin)?.catalyst !== undefined;
      const parts = poured(
        split.parts,
        more.map(({ material }) => material),
        catalysed,
      );
      return knownBy({ resin, pots, mass: split.total, parts, split }, [...reasons, ...why]);
    }),
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
