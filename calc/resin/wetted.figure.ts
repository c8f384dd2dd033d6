import { processSteps } from '../bag/bag.figure.ts';
import {
  allKnown,
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  known,
  knownBy,
  whenKnown,
} from '../figure/index.ts';
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

const wettedIn = defineFigure<readonly ResinItem[]>('wetted_at', (bench, path) =>
  whenKnown({ steps: bench.ask(processSteps), plan: bench.ask(layPlan) }, ({ steps, plan }) => {
    const layers = plan.layersOf.get(path);
    const step = layers === undefined ? undefined : steps.find((each) => each.path === path);
    if (step === undefined || layers === undefined) return known([]);
    const first = ({ key }: LaidLayer) => wetterOf(plan.stepsOf.get(key) ?? [], steps);
    const own = layers.filter((laid) => first(laid) === step);
    return ifKnown(allKnown(own.map((laid) => wetIn(bench, step, laid))), (each, reasons) =>
      knownBy(each.flat(), reasons),
    );
  }),
);

/** The step that wets a layer: a kit is joined dry on the bench where no resin is named there. */
const wetterOf = (laying: readonly Step[], steps: readonly Step[]): Step | undefined =>
  laying.find((step) => step.lay?.resin !== undefined) ?? laying.find((step) => !isInKit(step, steps)) ?? laying[0];

const isInKit = (step: Step, steps: readonly Step[]): boolean =>
  steps.some((kit) => kit.verb === 'kit' && kit.steps?.includes(step) === true);

function wetIn(bench: Bench, step: Step, { key, layer }: LaidLayer): Figure<readonly ResinItem[]> {
  const { process } = bench.recipe;
  // a coat is wet whatever it is made of, and so is the paste below a core
  const laidWet = step.lay?.resin !== undefined || layer.wetResin !== undefined || layer.kind === 'coat';
  return ifKnown(bench.ask(layerResin, key), ({ items }, reasons) =>
    knownBy(
      items.filter(
        ({ resin, what }) =>
          bench.material(resin)?.kind !== 'prepreg' &&
          (laidWet || what === 'bed' || process?.kind !== 'infusion' || resin !== process.resin),
      ),
      reasons,
    ),
  );
}

/** kg of one resin among what is made of several. */
export const massOf = (items: readonly Pick<ResinItem, 'resin' | 'mass'>[], resin: string): number =>
  items.reduce((sum, item) => (item.resin === resin ? sum + item.mass : sum), 0);
