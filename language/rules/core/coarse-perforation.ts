import { text, type Usual } from '../../../calc/figure/index.ts';
import { coresOf } from '../kit/cores.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt } from '../kit/layers.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Widest distance of the holes. */
const PITCH: Usual = {
  habit: 'perforation',
  what: 'how far apart the holes of a core stand',
  value: metres(0.05),
  source: '20 to 50 mm, from memory',
};

export const coreCoarsePerforation = rule({
  name: 'core/coarse-perforation',
  severity: 'warning',
  title: 'the holes of a core are too far apart',
  on: 'recipe',
  check(context) {
    const most = habitOf(context.bench, PITCH);
    if (context.recipe.process?.kind !== 'infusion') return;
    for (const core of coresOf(context)) {
      const pitch = core.layer.perforation?.pitch;
      if (pitch === undefined || pitch.si <= most + 1e-9) continue;
      const diameter = core.layer.perforation?.diameter;
      context.report({
        at: clauseAt(core, 'perforate'),
        message: text(
          'the holes of {core} stand {pitch} apart; the resin spreads over the skin below from holes that are {most} apart or less',
          { core: core.name, pitch, most: metres(most) },
        ),
        fixes: [
          context.edit.replace(
            'Write every 40 mm',
            clauseAt(core, 'perforate'),
            `perforate ${asTyped(diameter ?? metres(0.002))} every 40 mm`,
          ),
        ],
      });
    }
  },
});
