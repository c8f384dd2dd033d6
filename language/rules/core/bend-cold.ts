import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { coresOf, stepsOn } from '../kit/cores.ts';
import { factValue, materialOf, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const coreBendCold = rule({
  name: 'core/bend-cold',
  severity: 'warning',
  title: 'a core is bent over a tool tighter than it goes cold',
  on: 'recipe',
  check(context) {
    const curve = factValue(
      context.recipe.stack?.tool === undefined ? undefined : context.bench.tool(context.recipe.stack.tool)?.curved,
    );
    const radius = Math.min(curve?.along?.si ?? Infinity, curve?.across?.si ?? Infinity);
    if (!Number.isFinite(radius)) return;
    for (const core of coresOf(context)) {
      const thickness = valueOf(context.ask(layerThickness, core.key));
      const bends = materialOf(context, core)?.bends?.flatMap((fact) => factValue(fact) ?? []) ?? [];
      // a sheet of another thickness bends in proportion
      const least =
        thickness === undefined
          ? undefined
          : bends
              .map(({ value, thickness: at }) => (at === undefined ? value.si : (value.si * thickness) / at.si))
              .sort((a, b) => a - b)[0];
      if (
        least === undefined ||
        radius >= least ||
        core.layer.score !== undefined ||
        stepsOn(context, core, 'score', 'shape').length > 0
      )
        continue;
      context.report({
        at: core.path,
        message: text('{core} bends cold to a radius of {least}; the tool has {radius}: score it, or form it warm', {
          core: core.name,
          least: metres(least),
          radius: metres(radius),
        }),
        fixes: [context.edit.addClause('Add score 1 mm every 30 mm', core.path, 'score 1 mm every 30 mm')],
      });
    }
  },
});
