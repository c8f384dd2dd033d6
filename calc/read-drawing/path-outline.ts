import { type Text, text } from '../figure/figure.ts';
import { scaled } from '../outline/transform.ts';
import { nothingDrawn } from './drawn.ts';
import { limits } from './limits.ts';
import { LineBuilder } from './line-builder.ts';
import { drawPath } from './path-data.ts';
import { type Picked, type PickFault, pickOutline } from './pick.ts';

/**
 * The outline that SVG path data in millimetres draws. It looks as a drawing program shows it: y of the data runs downwards, y of
 * the part upwards.
 */
export function readPathOutline(data: string): Picked | PickFault {
  const into = new LineBuilder(scaled(1e-3, -1e-3), { vertices: limits.vertices });
  const problem = drawPath(data, into);
  if (problem !== undefined) return { rule: 'degenerate', message: problem.message };
  const lines = into.lines();
  if (into.strange) return { rule: 'degenerate', message: strange };
  if (into.full)
    return {
      rule: 'degenerate',
      message: text('the path has more than {most} straights and arcs', { most: limits.vertices }),
    };
  return pickOutline({ ...nothingDrawn(), down: true, curves: lines.map((line) => ({ ...line, groups: [] })) }, {});
}

const strange: Text = text('a place of the path is no number, or further away than {most} m', {
  most: limits.furthest,
});
