import { text, type Usual } from '../../../calc/figure/index.ts';
import { outOfPart, SLACK } from '../kit/geometry.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, ofKind, onePerLine } from '../kit/layers.ts';
import { offCore } from '../kit/off-core.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Least core, or laminate, between an insert and the finished edge. */
const ROOM: Usual = {
  habit: 'edge',
  what: 'least room between an insert and the edge',
  value: metres(0.01),
  source: 'from memory',
};

export const insertTouchesEdge = rule({
  name: 'insert/touches-edge',
  severity: 'warning',
  title: 'an insert lies against the finished edge',
  on: 'recipe',
  check(context) {
    const room = habitOf(context.bench, ROOM);
    const layers = layersOf(context);
    for (const insert of onePerLine(ofKind(layers, 'insert'))) {
      const out = outOfPart(context.bench, insert);
      if (out === undefined || out > SLACK || -out >= room - SLACK) continue;
      // one that stands out of its core is told of as that
      if (offCore(context, layers, insert) !== undefined) continue;
      context.report({
        at: insert.path,
        message: text('{insert} comes within {left} of the finished edge; {room} or more are wanted', {
          insert: insert.name,
          left: metres(Math.max(0, -out)),
          room: metres(room),
        }),
      });
    }
  },
});
