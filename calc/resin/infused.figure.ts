import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  quantity,
  reason,
  text,
  whenKnown,
} from '../figure/index.ts';
import { MASS } from '../quantity/index.ts';
import { resinInPart, resinToMix } from './needs.figure.ts';
import { massOf, wettedAt } from './wetted.figure.ts';

/** Resin that is mixed for the infusion alone, kg: all of it but what was laid wet before, out of pots of its own. */
export const infusedResin = defineFigure<number>('infused_resin', (bench) =>
  whenKnown({ mix: bench.ask(resinToMix, ''), before: laidWet(bench) }, ({ mix, before }, reasons) => {
    const wet = before * mixedFor(bench, bench.recipe.process?.resin ?? '');
    if (wet === 0) return known(mix.total, reason('computed', 'resin to mix', { reasons }));
    const words = text('{mass} to mix, less {wet} for what is laid wet before', {
      mass: quantity(mix.total, MASS),
      wet: quantity(wet, MASS),
    });
    return known(Math.max(0, mix.total - wet), reason('computed', words, { reasons }));
  }),
);

/** kg of the resin of an infusion that stays in what was laid wet with it. */
function laidWet(bench: Bench): Figure<number> {
  const own = bench.recipe.process?.resin ?? '';
  return ifKnown(bench.ask(processSteps), (steps) =>
    ifKnown(allKnown(steps.map((step) => wettedAt(bench, step))), (each) =>
      known(each.reduce((sum, items) => sum + massOf(items, own), 0)),
    ),
  );
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
