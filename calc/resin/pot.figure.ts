import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  quantity,
  reason,
  text,
  type Usual,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerResinName } from '../laminate/fraction.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { following } from '../outcome.ts';
import { layPlan } from '../plan/lay.figure.ts';
import { stepWorkingTime } from '../plan/step.figure.ts';
import { MASS, TIME } from '../quantity/index.ts';
import { resinName, resinToMix } from './needs.figure.ts';
import { type Batches, batchesOf, largestPot, potLifeOf } from './pot-mass.ts';
import { gelTime, potLives } from './time.figure.ts';

/** Time in which a pot of an infusion is drunk. */
const POT_DRUNK: Usual = {
  habit: 'pot',
  what: 'time in which the part drinks one pot',
  value: quantity(1200, TIME),
  source: 'common practice: 20 min; a fill time is not computed yet',
};
/** The most that stands in one pot, however slow the resin. */
const LARGEST_POT: Usual = {
  habit: 'largest_pot',
  what: 'most resin in one pot',
  value: quantity(5, MASS),
  source: 'common practice: 3 to 5 kg, less for fast hardeners',
};

export interface BatchPlan extends Batches {
  /** how long each must stay workable, s */
  readonly needs: number;
}

/** How long a resin must stay workable: until what is laid with it is laid, or until the part has drunk its pot; s. */
const workNeeded = defineFigure<number>('work_needed', (bench, key) =>
  whenKnown(
    { name: resinName(bench, key), plan: bench.ask(layPlan), steps: bench.ask(processSteps) },
    ({ name, plan, steps }) => {
      const { process } = bench.recipe;
      const people = peopleOf(bench);
      const laying = steps.filter((step) => {
        const wet = process?.kind !== 'infusion' || step.lay?.resin !== undefined || name !== process.resin;
        return wet && (plan.layersOf.get(step.path) ?? []).some((laid) => isNamed(bench, laid.key, name));
      });
      if (laying.length === 0) return usual(bench, POT_DRUNK);
      return ifKnown(allKnown(laying.map((step) => bench.ask(stepWorkingTime, step.path))), (each, reasons) => {
        // each lay step is mixed for by itself: the longest counts
        const longest = each.reduce((most, t) => Math.max(most, t), 0) / people;
        return known(
          longest,
          reason('computed', text('the longest laying step, {people} people', { people }), { reasons }),
        );
      });
    },
  ),
);

function peopleOf(bench: Bench): number {
  const people = bench.shop?.people?.value;
  return people === undefined || people === UNKNOWN || !(people >= 1) ? 1 : people;
}

function isNamed(bench: Bench, key: string, name: string): boolean {
  const own = bench.ask(layerResinName, key);
  return isKnown(own) && own.value === name;
}

/** In how many pots the resin of one part is mixed, so that each stays workable as long as it must. */
export const batches = defineFigure<BatchPlan>('batches', (bench, key) =>
  whenKnown(
    { mix: bench.ask(resinToMix, key), needs: bench.ask(workNeeded, key), most: usual(bench, LARGEST_POT) },
    ({ mix, needs, most }, reasons) => {
      if (!(mix.total > 0)) return cannot(reason('computed', 'there is no resin to mix'));
      return ifKnown(potFor(bench, key, Math.max(needs, 60), most), (largest, more) => {
        const plan = following(batchesOf(mix.total, largest), (b) => ({ ...b, needs }));
        return worked(
          plan,
          text('no pot of more than {largest}: it stays workable for {needs}', {
            largest: quantity(largest, MASS),
            needs: quantity(needs, TIME),
          }),
          { reasons: [...more, ...reasons] },
        );
      });
    },
  ),
);

/** The largest pot that stays workable for a time, kg; a resin that only says when it gels is judged by that. */
function potFor(bench: Bench, key: string, time: number, most: number): Figure<number> {
  const lives = potLives(bench, key);
  if (isKnown(lives)) {
    const reading = lives.value.reduce((a, b) => (b.mass > a.mass ? b : a));
    return worked(
      following(largestPot(reading, time), (pot) => Math.min(pot, most)),
      'by the pot life for its mass',
      { reasons: lives.reasons },
    );
  }
  return whenKnown({ gel: bench.ask(gelTime, key), mix: bench.ask(resinToMix, key) }, ({ gel, mix }, reasons) => {
    const rounds = Math.max(1, Math.ceil(time / (0.75 * gel)));
    return known(
      Math.min(most, mix.total / rounds),
      reason('trade', 'a pot is used up in three quarters of the gel time', { source: 'common practice', reasons }),
    );
  });
}

/** Pot life of one batch at the temperature of the process, s. */
export const potLife = defineFigure<number>('pot_life', (bench, key) =>
  whenKnown({ lives: potLives(bench, key), batch: bench.ask(batches, key) }, ({ lives, batch }, reasons) => {
    const nearest = lives.reduce((a, b) =>
      Math.abs(Math.log(b.mass / batch.mass)) < Math.abs(Math.log(a.mass / batch.mass)) ? b : a,
    );
    const words = text('from {life} for {mass} to a batch of {batch}: life falls with the cube root of the mass', {
      life: quantity(nearest.value, TIME),
      mass: quantity(nearest.mass, MASS),
      batch: quantity(batch.mass, MASS),
    });
    return worked(potLifeOf(nearest, batch.mass), words, {
      source: 'surface to volume of a pot, from memory',
      reasons,
    });
  }),
);
