import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  isKnown,
  known,
  missing,
  quantity,
  reason,
  reasonsOf,
  text,
} from '../figure/index.ts';
import type { ResinItem } from '../laminate/mass.figure.ts';
import { MASS } from '../quantity/index.ts';
import { resinInPart, resinToMix } from './needs.figure.ts';
import { massOf, wettedAt } from './wetted.figure.ts';

/** Resin that is mixed for the infusion alone, kg: all of it but what was laid wet before, out of pots of its own. */
export const infusedResin = defineFigure<number>('infused_resin', (bench) => {
  const mix = bench.ask(resinToMix, '');
  const before = laidWet(bench);
  if (!isKnown(mix) || !isKnown(before)) return missing(mix, before);
  const { total } = mix.value;
  const reasons = reasonsOf(mix, before);
  const wet = before.value * mixedFor(bench, bench.recipe.process?.resin ?? '');
  if (wet === 0) return known(total, reason('computed', 'resin to mix', { reasons }));
  const words = text('{mass} to mix, less {wet} for what is laid wet before', {
    mass: quantity(total, MASS),
    wet: quantity(wet, MASS),
  });
  return known(Math.max(0, total - wet), reason('computed', words, { reasons }));
});

/** kg of the resin of an infusion that stays in what was laid wet with it. */
function laidWet(bench: Bench): Figure<number> {
  const own = bench.recipe.process?.resin ?? '';
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return steps;
  const each: Figure<readonly ResinItem[]>[] = [];
  for (const step of steps.value) if (step.lay !== undefined) each.push(wettedAt(bench, step));
  const wetted = allKnown(each);
  if (!isKnown(wetted)) return wetted;
  let mass = 0;
  for (const items of wetted.value) mass += massOf(items, own);
  return known(mass);
}

/**
 * What is mixed of a resin for each kg of it that a layer takes wet: with the allowance, and with its share of what the
 * consumables drink, but for an infusion: that feeds its consumables alone.
 */
export function mixedFor(bench: Bench, resin: string): number {
  const mix = bench.ask(resinToMix, resin);
  if (!isKnown(mix)) return 1;
  const { process } = bench.recipe;
  const inside = bench.ask(resinInPart, resin);
  const needed =
    process?.kind === 'infusion' && resin === process.resin
      ? Object.values(mix.value.needs).reduce((sum, mass) => sum + mass, 0)
      : isKnown(inside)
        ? inside.value.total
        : 0;
  return needed > 0 ? mix.value.total / needed : 1;
}
