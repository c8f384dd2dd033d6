import { text, type Usual } from '../../../calc/figure/index.ts';
import { layerArealWeight, layerFibreDensity } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { habitOf } from '../kit/habit.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { arealWeight } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Least cloth over a core that is stepped on. */
const GLASS: Usual = {
  habit: 'stepped_glass',
  what: 'least glass over a core that is stepped on',
  value: arealWeight(0.4),
  source: 'common practice',
};
const CARBON: Usual = {
  habit: 'stepped_carbon',
  what: 'least carbon over a core that is stepped on',
  value: arealWeight(0.2),
  source: 'common practice',
};

/** Lighter than this a fibre counts as carbon, kg/m3. */
const carbonBelow = 2000;

/** A weight of a person, kg; less is no step. */
const person = 50;

/** A part that is moulded with its coat, or its good face, against the tool is stepped on there. */
const facesTool = ({ recipe: { part } }: RecipeContext, layers: readonly LaidLayer[]): boolean =>
  part?.cosmetic === undefined ? layers[0]?.layer.kind === 'coat' : part.cosmetic === 'tool face';

export const stackThinOverCore = rule({
  name: 'stack/thin-over-core',
  severity: 'warning',
  title: 'a thin skin lies over a core that people step on',
  on: 'recipe',
  check(context) {
    const step = context.recipe.loads.find(({ loads }) =>
      loads.some(({ kind, amount }) => kind === 'weight' && amount.si >= person),
    );
    if (step === undefined) return;
    const layers = layersOf(context);
    const outward = facesTool(context, layers);
    const core = outward
      ? layers.find(({ layer }) => layer.kind === 'core')
      : layers.findLast(({ layer }) => layer.kind === 'core');
    if (core === undefined) return;
    const over = layers.filter(
      ({ index, layer }) => layer.kind === 'ply' && (outward ? index < core.index : index > core.index),
    );
    const weights = over.map((laid) => valueOf(context.ask(layerArealWeight, laid.key)));
    if (over.length === 0 || weights.some((weight) => weight === undefined)) return;
    const sum = weights.reduce<number>((all, weight) => all + (weight ?? 0), 0);
    const carbon = over.every((laid) => (valueOf(context.ask(layerFibreDensity, laid.key)) ?? Infinity) < carbonBelow);
    const wanted = habitOf(context.bench, carbon ? CARBON : GLASS);
    if (sum >= wanted - 1e-9) return;
    context.report({
      at: over[0]?.path ?? core.path,
      message: text(
        'the skin over {core} has {sum} of cloth and is stepped on ({load}): {wanted} or more, or heels dent it',
        { core: core.name, sum: arealWeight(sum), load: step.name, wanted: arealWeight(wanted) },
      ),
      related: [{ at: { entry: context.recipe.entry, path: step.path }, message: text('the load') }],
    });
  },
});
