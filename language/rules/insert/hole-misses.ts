import { text } from '../../../calc/figure/index.ts';
import { drilledIn } from '../kit/drilled.ts';
import { footprintOf, SLACK } from '../kit/geometry.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** From the middle of a hole to the edge of the insert, in diameters. Common practice. */
const fromEdge = 2.5;

export const insertHoleMisses = rule({
  name: 'insert/hole-misses',
  severity: 'error',
  title: 'holes come too near to the edge of their insert, or miss it',
  on: 'recipe',
  check(context) {
    for (const { step, into, diameter, reach } of drilledIn(context)) {
      const shape = into.layer.kind === 'insert' ? footprintOf(context.bench, into)?.placed.shape : undefined;
      if (reach === undefined || shape === undefined || !('length' in shape)) continue;
      const left = Math.min(shape.length / 2 - reach.x, shape.width / 2 - reach.y);
      if (left >= fromEdge * diameter - SLACK) continue;
      const figures = {
        insert: into.name,
        left: metres(Math.abs(left)),
        wanted: metres(fromEdge * diameter),
        diameter: metres(diameter),
      };
      context.report({
        at: step.path,
        message:
          left < 0
            ? text(
                'the outer holes lie {left} beside {insert}; holes of {diameter} want {wanted} of it beyond their middle',
                figures,
              )
            : text(
                'the outer holes stand {left} from the edge of {insert}; holes of {diameter} want {wanted} beyond their middle',
                figures,
              ),
        related: [{ at: { entry: context.recipe.entry, path: into.path }, message: text('the insert') }],
      });
    }
  },
});
