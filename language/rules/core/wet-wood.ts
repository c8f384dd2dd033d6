import { text, type Usual } from '../../../calc/figure/index.ts';
import { hasWord, head } from '../../../calc/plan/reading.ts';
import { habitOf } from '../kit/habit.ts';
import { clauseAt, factValue, layersOf, materialOf, onePerLine } from '../kit/layers.ts';
import { addStep } from '../kit/missing-step.ts';
import { share } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** Water in wood that is laid, kg/kg. */
const MOST: Usual = {
  habit: 'wood_moisture',
  what: 'the most water in wood that is laid',
  value: share(0.12),
  source: 'common practice',
};

export const coreWetWood = rule({
  name: 'core/wet-wood',
  severity: 'warning',
  title: 'wood goes into the laminate too wet',
  on: 'recipe',
  check(context) {
    const most = habitOf(context.bench, MOST);
    for (const wood of onePerLine(
      layersOf(context).filter(({ layer }) => layer.kind === 'core' || layer.kind === 'insert'),
    )) {
      const typed = wood.layer.moisture;
      const water = typed ?? factValue(materialOf(context, wood)?.moisture);
      if (
        water === undefined ||
        water.si <= most + 1e-9 ||
        stepsOf(context).some(
          ({ step }) =>
            step.verb === 'dry' &&
            [wood.name, wood.layer.material].some((name) => name !== undefined && hasWord(head(step), name)),
        )
      )
        continue;
      context.report({
        at: typed === undefined ? `${wood.path}.material` : clauseAt(wood, 'moisture'),
        message: text('{material} holds {water} of water; {most} at the most when it is laid: dry it first', {
          material: wood.layer.material ?? '',
          water,
          most: { ...water, si: most },
        }),
        fixes: [addStep(context, 'dry', `dry ${wood.name}, 12 h at 50 degC`)],
      });
    }
  },
});
