import type { Bench } from '../figure/index.ts';
import type { Step } from '../model/index.ts';
import { allSaid } from '../plan/reading.ts';

const LIQUIDS: ReadonlySet<string> = new Set(['resin', 'gelcoat', 'paste']);
/** Steps that work on a pot which another step names its amount for. */
const OF_THE_POT: ReadonlySet<string> = new Set(['mix', 'infuse', 'accelerate', 'catalyse', 'tint', 'degas']);

/**
 * Resins and pastes that a step names and no layer takes: `seal edge epoxy`, `drill ... then fill paste`. They are mixed as they
 * are used, and stay in the part all the same.
 */
export function liquidsNamed(bench: Bench, step: Step): readonly string[] {
  if (step.lay !== undefined || OF_THE_POT.has(step.verb)) return [];
  const words = allSaid(step).flatMap((each) => (each.kind === 'word' ? [each.word] : []));
  return [...new Set([...(step.material === undefined ? [] : [step.material]), ...words])].filter((name) =>
    LIQUIDS.has(bench.material(name)?.kind ?? ''),
  );
}
