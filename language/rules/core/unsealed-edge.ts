import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { cutoutsOf } from '../../../calc/outline/part.figure.ts';
import { samples } from '../../../calc/outline/samples.ts';
import { outOfFrame, type Placed } from '../../../calc/outline/shape.ts';
import { hasWord, head } from '../../../calc/plan/reading.ts';
import { covers } from '../../../calc/stack/footprint.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { wrapsRound } from '../../../calc/stack/order.ts';
import { coresOf } from '../kit/cores.ts';
import { endsOf, outsideOf } from '../kit/free-edge.ts';
import { footprintOf, partPlaced } from '../kit/geometry.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { addStep } from '../kit/missing-step.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** How closely the rim of a cutout is walked along, m. */
const STEP = 0.01;

/** A core that runs out to the edge of the part, and no ply goes round it. */
function openAtEdge(context: RecipeContext, layers: readonly LaidLayer[], core: LaidLayer): boolean {
  if (layers.some(({ layer }) => layer.kind === 'ply' && layer.extent.kind === 'wrap')) return false;
  if (core.layer.extent.kind !== 'net') return endsOf(context, core, 0)?.atEdge === true;
  return core.layer.inset === undefined && wrapsRound(layers, core).length === 0;
}

/** The place in the recipe of the first cutout whose rim runs through bare core. */
function cutThrough(context: RecipeContext, layers: readonly LaidLayer[], core: LaidLayer): string | undefined {
  const typed = context.recipe.part?.cutouts ?? [];
  if (typed.length === 0) return undefined;
  const own = footprintOf(context.bench, core);
  const cutouts = own === undefined ? [] : (valueOf(context.ask(cutoutsOf)) ?? []);
  const solid = layers.flatMap((laid) =>
    laid.layer.kind === 'insert' ? (footprintOf(context.bench, laid) ?? []) : [],
  );
  const part = partPlaced(context.bench);
  const bare = (cutout: Placed): boolean => {
    const rim = samples(cutout.shape, STEP);
    if (isImpossible(rim) || own === undefined || part === undefined) return false;
    const points = rim.map((point) => outOfFrame(cutout, point));
    // one that stands out over the edge is told of as such
    if (points.some((point) => outsideOf(part, point) > 0)) return false;
    return points.some((point) => covers(own, point) === true && !solid.some((piece) => covers(piece, point) === true));
  };
  return typed[cutouts.findIndex(bare)]?.path;
}

export const coreUnsealedEdge = rule({
  name: 'core/unsealed-edge',
  severity: 'warning',
  title: 'a core lies open at the finished edge',
  on: 'recipe',
  check(context) {
    const { process } = context.recipe;
    if (process === undefined || stepsOf(context).length === 0) return;
    const cores = coresOf(context);
    if (cores.length === 0) return;
    const closes = stepsOf(context).some(
      ({ step }) => step.verb === 'seal edge' || (step.verb === 'fill' && hasWord(head(step), 'edge')),
    );
    if (closes) return;
    const layers = layersOf(context);
    const shut = () =>
      addStep(context, 'seal edge', `seal edge${process.resin === undefined ? '' : ` ${process.resin}`}`);
    for (const core of cores) {
      if (core.layer.sealed === true) continue;
      if (openAtEdge(context, layers, core)) {
        context.report({
          at: core.path,
          message: text(
            '{core} reaches the finished edge and nothing closes it there: wrap a ply round it, end it inside, or seal the edge',
            { core: core.name },
          ),
          fixes: [shut()],
        });
        continue;
      }
      const cutout = cutThrough(context, layers, core);
      if (cutout === undefined) continue;
      context.report({
        at: core.path,
        message: text(
          '{core} lies open all round a cutout and nothing closes it there: set something solid in its rim, or seal the edge',
          { core: core.name },
        ),
        related: [{ at: { entry: context.recipe.entry, path: cutout }, message: text('the cutout') }],
        fixes: [shut()],
      });
    }
  },
});
