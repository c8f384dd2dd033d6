import type { Bench, MaterialFacts, Usual } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { NEAR } from './cure-near.ts';
import { habitOf } from './habit.ts';
import { kelvinDifference } from './shown.ts';

/** Without data: about this much over the cure. */
const OVER_CURE: Usual = {
  habit: 'over_cure',
  what: 'glass transition over the hottest cure',
  value: kelvinDifference(17),
  source: "boatbuilders' forum, quoting a resin maker: 30 degF",
};

/** The glass transition that a resin has reached by its hottest cure so far (K): of its data, else by the usual rule. */
export function transitionReached(bench: Bench, resin: MaterialFacts, hottest: number): number {
  const near = habitOf(bench, NEAR);
  const reached = (resin.glassTransition ?? []).flatMap(({ value }) =>
    value === UNKNOWN || value.temperature === undefined || value.temperature.si > hottest + near
      ? []
      : [value.value.si],
  );
  return reached.length === 0 ? hottest + habitOf(bench, OVER_CURE) : Math.max(...reached);
}
