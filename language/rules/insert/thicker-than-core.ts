import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import { coreOf } from '../../../calc/stack/order.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, ofKind, onePerLine, valueOf } from '../kit/layers.ts';
import { asTyped, metres } from '../kit/shown.ts';
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
    const layers = layersOf(context);
    for (const insert of onePerLine(ofKind(layers, 'insert'))) {
      const core = coreOf(layers, insert);
      const own = valueOf(context.ask(layerThickness, insert.key));
      const around = core === undefined ? undefined : valueOf(context.ask(layerThickness, core.key));
      if (
        core === undefined ||
        own === undefined ||
        around === undefined ||
        own <= around + habitOf(context.bench, LEVEL)
      )
        continue;
      context.report({
        at: `${insert.path}.thickness`,
        message: text('{insert} is {thick} thick and stands {step} proud of {core}, which is {around}', {
          insert: insert.name,
          thick: metres(own),
          step: metres(own - around),
          core: core.name,
          around: metres(around),
        }),
        related: [{ at: { entry: context.recipe.entry, path: core.path }, message: text('the core') }],
        fixes: [
          context.edit.replace(
            text('Write {what}', { what: asTyped(metres(around)) }),
            `${insert.path}.thickness`,
            asTyped(metres(around)),
          ),
        ],
      });
    }
  },
});
