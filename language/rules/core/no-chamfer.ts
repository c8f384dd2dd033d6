import { quantity, text, type Usual } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { ANGLE } from '../../../calc/quantity/index.ts';
import { LEFT_FREE, WIDEST } from '../kit/core-gaps.ts';
import { coresOf } from '../kit/cores.ts';
import { endsOf } from '../kit/free-edge.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, valueOf } from '../kit/layers.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Steepest edge that a skin runs down without a kink. */
const STEEPEST: Usual = {
  habit: 'chamfer',
  what: 'steepest edge of a core inside the skins',
  value: quantity(30 * 0.017453292519943295, ANGLE),
  source: '20 deg is the rule of thumb, 45 deg has been used',
};
const SQUARE: Usual = {
  habit: 'square_edge',
  what: 'thickest core that may end square',
  value: metres(0.003),
  source: 'from memory',
};
/** What is written where the shop bears it, rad: the rule of thumb. */
const USUAL = (20 * Math.PI) / 180;

/** How near another piece lies that the skin runs on over; where a wider gap is told of as a channel, it is not told of twice. */
const fittedWithin = (context: RecipeContext, thickness: number): number =>
  context.recipe.process?.kind === 'infusion' ? LEFT_FREE * thickness : habitOf(context.bench, WIDEST);

export const coreNoChamfer = rule({
  name: 'core/no-chamfer',
  severity: 'warning',
  title: 'a core ends in a steep edge inside the skins',
  on: 'recipe',
  check(context) {
    const steepest = habitOf(context.bench, STEEPEST);
    const square = habitOf(context.bench, SQUARE);
    for (const core of coresOf(context)) {
      const { chamfer, inset, extent } = core.layer;
      if (inset === undefined && extent.kind === 'net') continue;
      const thickness = valueOf(context.ask(layerThickness, core.key));
      if (thickness === undefined || thickness <= square + 1e-9) continue;
      if (chamfer !== undefined && chamfer.si <= steepest + 1e-9) continue;
      // pieces that are fitted against each other, or reach the finished edge, end nowhere inside the skins
      if (endsOf(context, core, fittedWithin(context, thickness))?.insideSkins === false) continue;
      const right = asTyped(quantity(Math.min(USUAL, steepest), ANGLE));
      context.report({
        at: chamfer === undefined ? core.path : clauseAt(core, 'chamfer'),
        message:
          chamfer === undefined
            ? text(
                '{core} ends square inside the skins, {thickness} high: the skin bridges there; chamfer it to {right}',
                { core: core.name, thickness: metres(thickness), right },
              )
            : text('the edge of {core} stands at {chamfer}: more than {steepest} makes a kink that the skin bridges', {
                core: core.name,
                chamfer,
                steepest: quantity(steepest, ANGLE),
              }),
        fixes: [
          chamfer === undefined
            ? context.edit.addClause(text('Add {what}', { what: `chamfer ${right}` }), core.path, `chamfer ${right}`)
            : context.edit.replace(
                text('Write {what}', { what: `chamfer ${right}` }),
                clauseAt(core, 'chamfer'),
                `chamfer ${right}`,
              ),
        ],
      });
    }
  },
});
