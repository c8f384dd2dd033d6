import { text } from '../../../calc/figure/index.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { grooveOf, piecesBeside } from '../../../calc/stack/order.ts';
import { footprintOf, outOf, outOfPart, SLACK } from '../kit/geometry.ts';
import { layersOf, ofKind, onePerLine } from '../kit/layers.ts';
import { standsInPieces } from '../kit/off-core.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const hasGrooveFor = ({ layer }: LaidLayer, strip: LaidLayer): boolean =>
  layer.grooves?.some(({ strip: name }) => name === strip.name || name === strip.layer.name) === true;

export const stripLongerThanGroove = rule({
  name: 'strip/longer-than-groove',
  severity: 'warning',
  title: 'a strip runs out of the core that its groove is in',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const strip of onePerLine(ofKind(layers, 'strip'))) {
      const core = grooveOf(layers, strip);
      const around = core === undefined ? undefined : footprintOf(context.bench, core);
      const out = outOf(footprintOf(context.bench, strip)?.placed, around?.placed)?.by;
      if (
        core === undefined ||
        around === undefined ||
        out === undefined ||
        out + around.inset <= SLACK ||
        (outOfPart(context.bench, strip) ?? 1) > SLACK
      )
        continue;
      // one groove may run on through pieces that are fitted against each other
      const pieces = piecesBeside(layers, core).filter((piece) => hasGrooveFor(piece, strip));
      const own = footprintOf(context.bench, strip)?.placed;
      if (pieces.length > 1 && own !== undefined && standsInPieces(context, pieces, own)) continue;
      context.report({
        at: strip.path,
        message: text(
          '{strip} runs {out} out of {core}, and there its groove ends: the strip goes over the core edge',
          { strip: strip.name, out: metres(out + around.inset), core: core.name },
        ),
        related: [{ at: { entry: context.recipe.entry, path: core.path }, message: text('the core with the groove') }],
      });
    }
  },
});
