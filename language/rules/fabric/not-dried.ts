import { text } from '../../../calc/figure/index.ts';
import { hasWord, head } from '../../../calc/plan/reading.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { factValue, layersOf, materialOf, onePerLine } from '../kit/layers.ts';
import { addStep } from '../kit/missing-step.ts';
import { asTyped } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const fabricNotDried = rule({
  name: 'fabric/not-dried',
  severity: 'warning',
  title: 'a cloth that must be dried is laid as it is',
  on: 'recipe',
  check(context) {
    const told = new Set<string>();
    for (const laid of onePerLine(layersOf(context).filter(isCloth))) {
      const dry = factValue(materialOf(context, laid)?.dry);
      const name = laid.layer.material;
      if (dry === undefined || name === undefined || told.has(name) || stepsOf(context).length === 0) continue;
      if (
        stepsOf(context).some(
          ({ step }) => step.verb === 'dry' && hasWord(head(step), name, laid.name, laid.layer.name),
        )
      )
        continue;
      told.add(name);
      const line = `dry ${name}, ${asTyped(dry.time)}${dry.temperature === undefined ? '' : ` at ${asTyped(dry.temperature)}`}`;
      context.report({
        at: `${laid.path}.material`,
        message: text('{material} draws water from the air and is dried first, {time}; no step dries {layer}', {
          material: name,
          time: dry.time,
          layer: laid.name,
        }),
        fixes: [addStep(context, 'dry', line)],
      });
    }
  },
});
