import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { placedContour } from '../../../calc/piece/footprint-contour.ts';
import { discFits, widestDisc } from '../../../calc/piece/widest-disc.ts';
import { coresOf } from '../kit/cores.ts';
import { footprintOf } from '../kit/geometry.ts';
import { clauseAt, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const coreChamferEatsRim = rule({
  name: 'core/chamfer-eats-rim',
  severity: 'warning',
  title: 'the chamfer leaves no flat core',
  on: 'recipe',
  check(context) {
    for (const core of coresOf(context)) {
      const { chamfer } = core.layer;
      if (chamfer === undefined || chamfer.si <= 0) continue;
      const thickness = valueOf(context.ask(layerThickness, core.key));
      const footprint = footprintOf(context.bench, core);
      if (thickness === undefined || footprint?.whole !== true) continue;
      const outline = placedContour(footprint.placed);
      if (isImpossible(outline)) continue;
      const run = thickness / Math.tan(chamfer.si);
      if (discFits(outline, run + footprint.inset)) continue;
      const half = widestDisc(outline);
      context.report({
        at: clauseAt(core, 'chamfer'),
        message: text(
          'a slope of {chamfer} runs in by {run} over {thickness} of core, and the core is only {half} wide from its toe to its middle: nothing flat is left',
          {
            chamfer,
            run: metres(run),
            thickness: metres(thickness),
            half: metres(Math.max(0, half - footprint.inset)),
          },
        ),
      });
    }
  },
});
