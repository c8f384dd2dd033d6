import { ofSteps } from '../bag/bag.figure.ts';
import { cannot, defineFigure, ifKnown, isKnown, known, knownBy, reason, whenKnown } from '../figure/index.ts';
import { type MixPart, type MixSplit, mixOf } from './mix.figure.ts';
import { resinName, resinToMix } from './needs.figure.ts';
import { potLifeFor, potLimit } from './pot.figure.ts';
import { batchesOf } from './pot-mass.ts';
import { type StepPot, stepNeeds, stepPots } from './step-pots.figure.ts';
import { massOf } from './wetted.figure.ts';

/** The pots of a resin over all steps. */
export interface BatchPlan {
  readonly batches: number;
  /** kg in the largest, without the catalyst */
  readonly mass: number;
  /** all are as large */
  readonly alike: boolean;
  /** how long each must stay workable, s */
  readonly needs: number;
}

/** In how many pots the resin of one part is mixed: every step has its own, and each stays workable as long as it must. */
export const batches = defineFigure<BatchPlan>('batches', (bench, key) =>
  whenKnown({ name: resinName(bench, key), mix: bench.ask(resinToMix, key) }, ({ name, mix }) =>
    ifKnown(bench.ask(potLimit, key), (limit, reasons) => {
      if (!(mix.total > 0)) return cannot(reason('computed', 'there is no resin to mix'));
      const { needs } = limit;
      return ifKnown(ofSteps(bench, stepNeeds), (each) => {
        const own = each.filter(({ resin }) => resin === name);
        const masses = own.map(({ mass, pots }) => mass / pots);
        if (!isAll(massOf(own, name), mix.total)) {
          const plain = batchesOf(mix.total, limit.mass);
          return 'problem' in plain
            ? cannot(reason('computed', plain.problem))
            : knownBy({ ...plain, alike: true, needs }, reasons);
        }
        const mass = Math.max(...masses);
        return knownBy(
          {
            batches: own.reduce((sum, { pots }) => sum + pots, 0),
            mass,
            alike: masses.every((other) => isAll(other, mass)),
            needs,
          },
          reasons,
        );
      });
    }),
  ),
);

/** Whether the steps mix all that is mixed: a layer that no step lays has no pot. */
const isAll = (some: number, all: number): boolean => Math.abs(some - all) <= 1e-6 * all;

/** Pot life of the largest pot at the temperature of the process, s. */
export const potLife = defineFigure<number>('pot_life', (bench, key) =>
  ifKnown(bench.ask(batches, key), ({ mass }) => potLifeFor(bench, key, mass)),
);

/** The mix of one part by weight, to the step of the scale: what all its pots hold. */
export const mixSplit = defineFigure<MixSplit>('mix_split', (bench, key) =>
  whenKnown({ name: resinName(bench, key), mix: bench.ask(resinToMix, key) }, ({ name, mix }) => {
    const [needs, pots] = [ofSteps(bench, stepNeeds), ofSteps(bench, stepPots)];
    const all = isKnown(needs) && massOf(needs.value, name);
    if (!isKnown(pots) || all === false || !isAll(all, mix.total)) return mixOf(bench, key, mix.total);
    return known(together(pots.value.filter(({ resin }) => resin === name)), ...pots.reasons);
  }),
);

function together(pots: readonly StepPot[]): MixSplit {
  const parts = new Map<string, MixPart>();
  for (const { pots: times, split } of pots)
    for (const { what, mass, volume } of split.parts) {
      const before = parts.get(what);
      parts.set(what, {
        what,
        mass: (before?.mass ?? 0) + times * mass,
        ...(volume === undefined ? {} : { volume: (before?.volume ?? 0) + times * volume }),
      });
    }
  return {
    parts: [...parts.values()],
    total: pots.reduce((sum, { pots: times, mass }) => sum + times * mass, 0),
    error: Math.max(...pots.map(({ split }) => split.error)),
  };
}
