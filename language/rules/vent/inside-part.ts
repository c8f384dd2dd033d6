import { text } from '../../../calc/figure/figure.ts';
import { liesBetween, linesOf } from '../kit/lines.ts';
import { rule } from '../rule.ts';

export const ventInsidePart = rule({
  name: 'vent/inside-part',
  severity: 'info',
  title: 'a vent lies on the part',
  on: 'recipe',
  check(context) {
    const feeds = linesOf(context, 'feed');
    for (const vent of linesOf(context, 'vent')) {
      if (vent.outside.length === 0 || !vent.outside.every((far) => far < 0)) continue;
      // fed from two sides, or from all round, it has to lie there
      const between = feeds.some((one, i) => feeds.slice(i + 1).some((other) => liesBetween(vent, one, other)));
      if (between || feeds.some(({ around }) => around !== undefined)) continue;
      context.report({
        at: vent.worked.step.path,
        message: text(
          '{vent} lies on the part: right where the fronts close last, else it pulls them in too soon and leaves a print',
          { vent: vent.name },
        ),
      });
    }
  },
});
