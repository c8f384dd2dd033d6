import { text } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { coresOf } from '../kit/cores.ts';
import { clauseAt, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Steepest edge that a skin runs down without a kink, rad. 20 deg is the rule of thumb, 45 deg has been used. */
const steepest = (30 * Math.PI) / 180;

/** Thinner than this no skin minds, m. From memory. */
const thin = 0.003;

export const coreNoChamfer = rule({
  name: 'core/no-chamfer',
  severity: 'warning',
  title: 'a core ends in a steep edge inside the skins',
  on: 'recipe',
  check(context) {
    for (const core of coresOf(context)) {
      const thickness = valueOf(context.ask(layerThickness, core.key));
      const { chamfer, inset, extent } = core.layer;
      if ((inset === undefined && extent.kind === 'net') || thickness === undefined || thickness <= thin) continue;
      if (chamfer !== undefined && chamfer.si <= steepest + 1e-9) continue;
      context.report({
        at: chamfer === undefined ? core.path : clauseAt(core, 'chamfer'),
        message:
          chamfer === undefined
            ? text(
                '{core} ends square inside the skins, {thickness} high: the skin bridges there; chamfer it to 20 deg',
                { core: core.name, thickness: metres(thickness) },
              )
            : text('the edge of {core} stands at {chamfer}: more than 30 deg makes a kink that the skin bridges', {
                core: core.name,
                chamfer,
              }),
        fixes: [
          chamfer === undefined
            ? context.edit.addClause('Add chamfer 20 deg', core.path, 'chamfer 20 deg')
            : context.edit.replace('Write chamfer 20 deg', clauseAt(core, 'chamfer'), 'chamfer 20 deg'),
        ],
      });
    }
  },
});
