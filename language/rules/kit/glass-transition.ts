import type { MaterialFacts } from '../../../calc/figure/index.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';

/** Without data: about this much over the cure. Source: boatbuilders' forum, quoting a resin maker (30 degF). */
const OVER_CURE = 17;

/** The glass transition that a resin has reached by its hottest cure so far (K): of its data, else by the usual rule. */
export function transitionReached(resin: MaterialFacts, hottest: number): number {
  const reached = (resin.glassTransition ?? []).flatMap(({ value }) =>
    value === UNKNOWN || value.temperature === undefined || value.temperature.si > hottest + 5 ? [] : [value.value.si],
  );
  return reached.length === 0 ? hottest + OVER_CURE : Math.max(...reached);
}
