import { text, type Usual } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { contourDistance } from '../../../calc/outline/contour-distance.ts';
import { contourOf } from '../../../calc/outline/contour-of.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { drilledIn } from '../kit/drilled.ts';
import { footprintOf, SLACK } from '../kit/geometry.ts';
import { habitOf } from '../kit/habit.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** From the middle of a hole to the edge of the insert, in diameters. Common practice. */
const FROM_EDGE: Usual = {
  habit: 'hole_edge',
  what: 'from the middle of a hole to the edge of its insert, in diameters',
  value: { si: 2.5, dimension: NUMBER },
  source: 'common practice',
};

/** The four corners of a pattern, about the middle of its insert. */
const outerHoles = ({ x, y }: Point): Point[] => [
  { x, y },
  { x: -x, y },
  { x: -x, y: -y },
  { x, y: -y },
];

export const insertHoleMisses = rule({
  name: 'insert/hole-misses',
  severity: 'error',
  title: 'holes come too near to the edge of their insert, or miss it',
  on: 'recipe',
  check(context) {
    const fromEdge = habitOf(context.bench, FROM_EDGE);
    for (const { step, into, diameter, reach } of drilledIn(context)) {
      const shape = into.layer.kind === 'insert' ? footprintOf(context.bench, into)?.placed.shape : undefined;
      const outline = shape === undefined ? undefined : contourOf(shape);
      if (reach === undefined || outline === undefined || isImpossible(outline)) continue;
      const left = Math.min(...outerHoles(reach).map((hole) => -contourDistance(outline, hole)));
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
