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
  quantity,
  reason,
  text,
  type Usual,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { UNKNOWN } from '../model/index.ts';
import { following } from '../outcome.ts';
import { stepWorkingTime } from '../plan/step.figure.ts';
import { MASS, TIME } from '../quantity/index.ts';
import { resinName, resinToMix } from './needs.figure.ts';
import { largestPot, nearestReading, potLifeOf, shortestUse } from './pot-mass.ts';
import { gelTime, potLives } from './time.figure.ts';
import { massOf, wettedAt } from './wetted.figure.ts';

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

/** How long a resin must stay workable: until what is laid with it is laid, and until the part has drunk its pot; s. */
const workNeeded = defineFigure<number>('work_needed', (bench, key) =>
  whenKnown({ name: resinName(bench, key), steps: bench.ask(processSteps) }, ({ name, steps }) => {
    const { process } = bench.recipe;
    const laying = steps.filter((step) => {
      const wetted = wettedAt(bench, step);
      return isKnown(wetted) && massOf(wetted.value, name) > 0;
    });
    const drunk = laying.length === 0 || (process?.kind === 'infusion' && process.resin === name);
    return whenKnown(
      {
        each: allKnown(laying.map((step) => bench.ask(stepWorkingTime, step.path))),
        drunk: drunk ? usual(bench, POT_DRUNK) : known(0),
      },
      ({ each, drunk }, reasons) => {
        // each step is mixed for by itself: the longest counts
        const people = peopleOf(bench);
        const longest = each.reduce((most, t) => Math.max(most, t), 0) / people;
        return longest > drunk
          ? known(
              longest,
              reason('computed', text('the longest laying step, {people} people', { people }), { reasons }),
            )
          : knownBy(drunk, reasons);
      },
    );
  }),
);

function peopleOf(bench: Bench): number {
  const people = bench.shop?.people?.value;
  return people === undefined || people === UNKNOWN || !(people >= 1) ? 1 : people;
}

/** The largest pot of a resin that stays workable as long as it must. */
export interface PotLimit {
  /** kg */
  readonly mass: number;
  /** how long it must stay workable, s */
  readonly needs: number;
}

export const potLimit = defineFigure<PotLimit>('pot_limit', (bench, key) =>
  whenKnown({ needs: bench.ask(workNeeded, key), most: usual(bench, LARGEST_POT) }, ({ needs, most }, reasons) =>
    ifKnown(potFor(bench, key, Math.max(needs, shortestUse), most), (mass, more) =>
      known(
        { mass, needs },
        reason(
          'computed',
          text('no pot of more than {largest}: it stays workable for {needs}', {
            largest: quantity(mass, MASS),
            needs: quantity(needs, TIME),
          }),
          { reasons: [...more, ...reasons] },
        ),
      ),
    ),
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

/** Pot life of so much of a resin (kg) in one pot at the temperature of the process, s. */
export function potLifeFor(bench: Bench, key: string, mass: number): Figure<number> {
  return ifKnown(potLives(bench, key), (lives, reasons) => {
    const nearest = nearestReading(lives, mass);
    const words = text('from {life} for {mass} to a batch of {batch}: life falls with the cube root of the mass', {
      life: quantity(nearest.value, TIME),
      mass: quantity(nearest.mass, MASS),
      batch: quantity(mass, MASS),
    });
    return worked(potLifeOf(nearest, mass), words, { source: 'surface to volume of a pot, from memory', reasons });
  });
}
