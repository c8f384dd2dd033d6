import { text } from '../../../calc/figure/index.ts';
import { coreOf, grooveOf, piecesBeside } from '../../../calc/stack/order.ts';
import { footprintOf, overlapping } from '../kit/geometry.ts';
import { layersOf, ofKind, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const stripOverInsert = rule({
  name: 'strip/over-insert',
  severity: 'warning',
  title: 'a strip in its groove runs into an insert',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const strip of onePerLine(ofKind(layers, 'strip'))) {
      const core = grooveOf(layers, strip);
      const own = footprintOf(context.bench, strip)?.placed;
      if (core === undefined || own === undefined) continue;
      for (const insert of ofKind(layers, 'insert')) {
        const there = footprintOf(context.bench, insert)?.placed;
        const beside = coreOf(layers, insert);
        if (beside === undefined || !piecesBeside(layers, core).includes(beside) || overlapping(own, there) !== true)
          continue;
        context.report({
          at: strip.path,
          message: text('{strip} runs through {insert}: its groove in {core} would be cut into the insert', {
            strip: strip.name,
            insert: insert.name,
            core: core.name,
          }),
          related: [{ at: { entry: context.recipe.entry, path: insert.path }, message: text('the insert') }],
        });
      }
    }
  },
});
