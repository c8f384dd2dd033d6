import { text } from '../../../calc/figure/index.ts';
import { wetWithStyrene } from '../kit/cloths.ts';
import { coresOf, isBedded, stepsOn } from '../kit/cores.ts';
import { clauseAt, layersOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const coreScoreNotFilled = rule({
  name: 'core/score-not-filled',
  severity: 'warning',
  title: 'the cuts of a scored core stay open',
  on: 'recipe',
  check(context) {
    const kind = context.recipe.process?.kind;
    if (kind !== 'hand' && kind !== 'bagged') return;
    for (const core of coresOf(context)) {
      if (
        (core.layer.score === undefined && stepsOn(context, core, 'score').length === 0) ||
        isBedded(context, core) ||
        stepsOn(context, core, 'fill').length > 0
      )
        continue;
      const below = layersOf(context)
        .slice(0, core.index)
        .findLast(({ layer }) => layer.kind === 'ply');
      const paste = below !== undefined && wetWithStyrene(context, below) ? 'core_bedding_paste' : 'epoxy_fillet';
      context.report({
        at: core.layer.score === undefined ? core.path : clauseAt(core, 'score'),
        message: text(
          'nothing fills the cuts of {core}: bed it in paste, or fill the cuts; open they are a path for water',
          { core: core.name },
        ),
        fixes: [context.edit.addClause(text('Add bedded {what}', { what: paste }), core.path, `bedded ${paste}`)],
      });
    }
  },
});
