import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { habitOf } from '../kit/habit.ts';
import { atThickness, insertsInCores } from '../kit/inserts.ts';
import { valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const LEVEL: Usual = {
  habit: 'level',
  what: 'step that a skin lies over without a bridge',
  value: metres(0.0005),
  source: 'from memory',
};

export const insertThickerThanCore = rule({
  name: 'insert/thicker-than-core',
  severity: 'warning',
  title: 'an insert is thicker than its core',
  on: 'recipe',
  check(context) {
    for (const found of insertsInCores(context)) {
      const { insert, core, around } = found;
      const own = valueOf(context.ask(layerThickness, insert.key));
      if (own === undefined || own <= around + habitOf(context.bench, LEVEL)) continue;
      context.report({
        ...atThickness(context, found),
        message: text('{insert} is {thick} thick and stands {step} proud of {core}, which is {around}', {
          insert: insert.name,
          thick: metres(own),
          step: metres(own - around),
          core: core.name,
          around: metres(around),
        }),
      });
    }
  },
});
