import { text } from '../../../calc/figure/index.ts';
import { coresOf } from '../kit/cores.ts';
import { clauseAt } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Widest gap that the resin does not race through, m. Common practice. */
const widest = 0.002;

export const coreRaceTrack = rule({
  name: 'core/race-track',
  severity: 'error',
  title: 'a gap beside the core lets the resin race round',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'infusion') return;
    for (const core of coresOf(context)) {
      const groove = core.layer.grooves?.find(
        ({ clearance }) => clearance !== undefined && clearance.si > widest + 1e-9,
      );
      if (groove?.clearance === undefined) continue;
      context.report({
        at: clauseAt(core, 'clearance'),
        message: text(
          'a gap of {gap} beside the strip in {core} is a channel: over {most} the resin races through it and shuts the middle off dry',
          { gap: groove.clearance, core: core.name, most: metres(widest) },
        ),
        fixes: [context.edit.replace('Write clearance 1 mm', clauseAt(core, 'clearance'), 'clearance 1 mm')],
      });
    }
  },
});
