import { dartNeed } from '../../../calc/cloth/darts.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { origin } from '../../../calc/outline/shape.ts';
import { edgeTurns, footInBend } from '../../../calc/piece/edge-turns.ts';
import { placedContour } from '../../../calc/piece/footprint-contour.ts';
import { layerFootprint } from '../../../calc/stack/footprint.figure.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { placeShown } from '../kit/points.ts';
import { rule } from '../rule.ts';

export const dartSlitMissing = rule({
  name: 'dart/slit-missing',
  severity: 'warning',
  title: 'a wrapped ply has too little cloth at an inward bend',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      const { darts } = laid.layer;
      if (darts === 'auto') continue;
      const need = valueOf(context.ask(dartNeed, laid.key));
      // without any darts at all the bends outwards are told of
      if (need === undefined || need.slits === 0 || (darts === undefined && need.darts > 0)) continue;
      const footprint = valueOf(context.ask(layerFootprint, laid.key));
      const outline = footprint === undefined ? undefined : placedContour(footprint.placed, footprint.stretch);
      const bend = need.bends.find(({ slits }) => slits > 0);
      if (outline === undefined || isImpossible(outline) || bend === undefined) continue;
      const foot = footInBend(edgeTurns(outline), bend, 0.5);
      const shown = { ply: laid.name, ...placeShown(foot?.at ?? origin) };
      context.report({
        at: darts === undefined ? clauseAt(laid, 'wrap') : clauseAt(laid, 'darts'),
        message:
          need.slits === 1
            ? text(
                'at an inward bend at ({x}, {y}) {ply} is too short at its free edge: a relief slit lets it open',
                shown,
              )
            : text(
                'round an inward bend at ({x}, {y}) {ply} is too short at its free edge: {slits} relief slits let it open',
                { ...shown, slits: need.slits },
              ),
        fixes: [
          darts === undefined
            ? context.edit.addClause('Add darts auto', laid.path, 'darts auto')
            : context.edit.replace('Write darts auto', clauseAt(laid, 'darts'), 'darts auto'),
        ],
      });
    }
  },
});
