import { dartNeed } from '../../../calc/cloth/darts.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { clauseAt, layersOf, onePerLine, valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

export const dartSlitMissing = rule({
  name: 'dart/slit-missing',
  severity: 'warning',
  title: 'a wrapped ply has too little cloth at an inward bend',
  on: 'recipe',
  check(context) {
    for (const laid of onePerLine(layersOf(context))) {
      const { darts, extent } = laid.layer;
      if (extent.kind !== 'wrap' || darts === 'auto') continue;
      const need = valueOf(context.ask(dartNeed, laid.key));
      // without any darts at all the bends outwards are told of
      if (need === undefined || need.slits === 0 || (darts === undefined && need.darts > 0)) continue;
      context.report({
        at: darts === undefined ? clauseAt(laid, 'wrap') : clauseAt(laid, 'darts'),
        message: text('round an inward bend {ply} is too short at its free edge: {slits} relief slits let it open', {
          ply: laid.name,
          slits: need.slits,
        }),
        fixes: [
          darts === undefined
            ? context.edit.addClause('Add darts auto', laid.path, 'darts auto')
            : context.edit.replace('Write darts auto', clauseAt(laid, 'darts'), 'darts auto'),
        ],
      });
    }
  },
});
