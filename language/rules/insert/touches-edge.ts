import { text } from '../../../calc/figure/index.ts';
import { outOfPart, SLACK } from '../kit/geometry.ts';
import { factValue, layersOf, onePerLine } from '../kit/layers.ts';
import { offCore } from '../kit/off-core.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Least core, or laminate, between an insert and the finished edge, m. From memory; `habit edge` of the shop sets its own. */
const usualRoom = 0.01;

export const insertTouchesEdge = rule({
  name: 'insert/touches-edge',
  severity: 'warning',
  title: 'an insert lies against the finished edge',
  on: 'recipe',
  check(context) {
    const room = factValue(context.book.shop?.habits?.edge)?.amounts[0]?.si ?? usualRoom;
    const layers = layersOf(context);
    for (const insert of onePerLine(layers.filter(({ layer }) => layer.kind === 'insert'))) {
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
