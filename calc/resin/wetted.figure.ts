import { processSteps } from '../bag/bag.figure.ts';
import { allKnown, type Bench, defineFigure, type Figure, isKnown, known, knownBy, missing } from '../figure/index.ts';
import { layerResin, type ResinItem } from '../laminate/mass.figure.ts';
import type { Step } from '../model/index.ts';
import { layPlan } from '../plan/lay.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';

/**
 * Resin that is wet when a step lays its layers, as much as stays in the part. What is infused later is not, nor what a
 * prepreg brings, nor what a kit was joined with on the bench when the kit is laid. Most steps lay nothing, and ask nothing.
 */
export const wettedAt = (bench: Bench, { lay, path }: Step): Figure<readonly ResinItem[]> =>
  lay === undefined ? nothing : bench.ask(wettedIn, path);

const nothing = known<readonly ResinItem[]>([]);

const wettedIn = defineFigure<readonly ResinItem[]>('wetted_at', (bench, path) => {
  const asked = bench.ask(processSteps);
  const found = bench.ask(layPlan);
  if (!isKnown(asked) || !isKnown(found)) return missing(asked, found);
  const steps = asked.value;
  const plan = found.value;
  const layers = plan.layersOf.get(path);
  const step = layers === undefined ? undefined : steps.find((each) => each.path === path);
  if (step === undefined || layers === undefined) return nothing;
  const each: Figure<readonly ResinItem[]>[] = [];
  for (const laid of layers)
    if (wetterOf(plan.stepsOf.get(laid.key) ?? [], steps) === step) each.push(wetIn(bench, step, laid));
  const items = allKnown(each);
  return isKnown(items) ? knownBy(items.value.flat(), items.reasons) : items;
});

/** The step that wets a layer: a kit is joined dry on the bench where no resin is named there. */
const wetterOf = (laying: readonly Step[], steps: readonly Step[]): Step | undefined =>
  laying.find((step) => step.lay?.resin !== undefined) ?? laying.find((step) => !isInKit(step, steps)) ?? laying[0];

const isInKit = (step: Step, steps: readonly Step[]): boolean =>
  steps.some((kit) => kit.verb === 'kit' && kit.steps?.includes(step) === true);

function wetIn(bench: Bench, step: Step, { key, layer }: LaidLayer): Figure<readonly ResinItem[]> {
  const resin = bench.ask(layerResin, key);
  if (!isKnown(resin)) return resin;
  const { process } = bench.recipe;
  // a coat is wet whatever it is made of, and so is the paste below a core
  const laidWet = step.lay?.resin !== undefined || layer.wetResin !== undefined || layer.kind === 'coat';
  const infused = !laidWet && process?.kind === 'infusion' ? process.resin : undefined;
  const wet = resin.value.items.filter(
    (item) =>
      bench.material(item.resin)?.kind !== 'prepreg' &&
      (item.what === 'bed' || infused === undefined || item.resin !== infused),
  );
  return knownBy(wet, resin.reasons);
}

/** kg of one resin among what is made of several. */
export function massOf(items: readonly Pick<ResinItem, 'resin' | 'mass'>[], resin: string): number {
  let mass = 0;
  for (const item of items) if (item.resin === resin) mass += item.mass;
  return mass;
}
