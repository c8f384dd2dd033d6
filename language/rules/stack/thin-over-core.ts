import { text } from '../../../calc/figure/index.ts';
import { layerArealWeight, layerFibreDensity } from '../../../calc/laminate/fraction.figure.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { arealWeight } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Least cloth over a core that is stepped on, kg/m2: glass, carbon. Common practice. */
const least = { glass: 0.4, carbon: 0.2 };

/** Lighter than this a fibre counts as carbon, kg/m3. */
const carbonBelow = 2000;

/** A weight of a person, kg; less is no step. */
const person = 50;

export const stackThinOverCore = rule({
  name: 'stack/thin-over-core',
  severity: 'warning',
  title: 'a thin skin lies over a core that people step on',
  on: 'recipe',
  check(context) {
    const step = context.recipe.loads.find(({ loads }) =>
      loads.some(({ kind, amount }) => kind === 'weight' && amount.si >= person),
    );
    const layers = layersOf(context);
    const core = layers.findLast(({ layer }) => layer.kind === 'core');
    if (step === undefined || core === undefined) return;
    const over = layers.slice(core.index + 1).filter(({ layer }) => layer.kind === 'ply');
    const weights = over.map((laid) => valueOf(context.ask(layerArealWeight, laid.key)));
    if (over.length === 0 || weights.some((weight) => weight === undefined)) return;
    const sum = weights.reduce<number>((all, weight) => all + (weight ?? 0), 0);
    const carbon = over.every((laid) => (valueOf(context.ask(layerFibreDensity, laid.key)) ?? Infinity) < carbonBelow);
    const wanted = carbon ? least.carbon : least.glass;
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
