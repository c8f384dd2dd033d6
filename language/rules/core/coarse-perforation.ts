import { text } from '../../../calc/figure/index.ts';
import { coresOf } from '../kit/cores.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt } from '../kit/layers.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { PITCH, usualPitch } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const coreCoarsePerforation = rule({
  name: 'core/coarse-perforation',
  severity: 'warning',
  title: 'the holes of a core are too far apart',
  on: 'recipe',
  check(context) {
    if (context.recipe.process?.kind !== 'infusion') return;
    const most = habitOf(context.bench, PITCH);
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
            text('Write {what}', { what: `every ${usualPitch(context.bench)}` }),
            clauseAt(core, 'perforate'),
            `perforate ${asTyped(diameter ?? metres(0.002))} every ${usualPitch(context.bench)}`,
          ),
        ],
      });
    }
  },
});
