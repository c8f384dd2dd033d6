import { DART_KEEP_OFF } from '../../../calc/cloth/habits.ts';
import { wrapReach } from '../../../calc/cloth/wrap.figure.ts';
import { text, usual } from '../../../calc/figure/index.ts';
import { clauseAt, layersOf, onePerLine, valueOf, wrappedIn } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const dartIntoFace = rule({
  name: 'dart/into-face',
  severity: 'warning',
  title: 'a dart would run into the face',
  on: 'recipe',
  check(context) {
    const keepOff = valueOf(usual(context.bench, DART_KEEP_OFF));
    for (const laid of onePerLine(wrappedIn(layersOf(context)))) {
      // a typed reach is held against what is needed elsewhere
      if (laid.layer.oversize !== undefined) continue;
      const wrap = valueOf(context.ask(wrapReach, laid.key));
      if (keepOff === undefined || wrap === undefined || wrap.reach > keepOff + 1e-9) continue;
      context.report({
        at: clauseAt(laid, 'wrap'),
        message: text(
          '{ply} reaches {reach} past the outline, and darts end {keep} short of the face: none can be cut; a longer landing',
          { ply: laid.name, reach: metres(wrap.reach), keep: metres(keepOff) },
        ),
      });
    }
  },
});
