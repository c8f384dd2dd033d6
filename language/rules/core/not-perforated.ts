import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { allSteps } from '../../../calc/plan/reading.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, materialOf, onePerLine, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { usualPitch } from '../kit/written.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Resin goes round a small piece of core, not through it: up to this thickness it still reaches. */
const THIN: Usual = {
  habit: 'thin_core',
  what: 'thickest core round which resin reaches',
  value: metres(0.002),
  source: 'from memory',
};

/** A step that pierces or scores this core, where the line of the core says nothing. */
const piercedByStep = (context: RecipeContext, core: LaidLayer): boolean =>
  allSteps(context.recipe.process?.steps ?? []).some(
    (step) =>
      (step.verb === 'perforate' || step.verb === 'score') &&
      (step.arguments.length === 0 ||
        step.arguments.some((argument) => argument.kind === 'word' && argument.word === core.layer.name)),
  );

export const coreNotPerforated = rule({
  name: 'core/not-perforated',
  severity: 'error',
  title: 'resin cannot reach the skin below the core',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'infusion') return;
    const layers = layersOf(context);
    const cores = layers.filter(
      ({ layer }) =>
        layer.kind === 'core' &&
        layer.perforation === undefined &&
        layer.score === undefined &&
        layer.extent.kind !== 'shape',
    );
    for (const core of onePerLine(cores)) {
      const below = layers.slice(0, core.index).findLast(({ layer }) => layer.kind === 'ply');
      const thickness = valueOf(context.ask(layerThickness, core.key));
      if (below === undefined || materialOf(context, core) === undefined || piercedByStep(context, core)) continue;
      if (thickness !== undefined && thickness <= habitOf(context.bench, THIN) + 1e-9) continue;
      const holes = `perforate 2 mm every ${usualPitch(context.bench)}`;
      context.report({
        at: core.path,
        message: text(
          '{core} has no holes and no cuts: the resin runs over it in the mesh and does not reach {below} on the tool side',
          { core: core.name, below: below.name },
        ),
        related: [{ at: { entry: context.recipe.entry, path: below.path }, message: text('the skin that stays dry') }],
        fixes: [context.edit.addClause(text('Add {what}', { what: holes }), core.path, holes)],
      });
    }
  },
});
