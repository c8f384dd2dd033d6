import type { MaterialFacts } from '../../../calc/figure/index.ts';
import { text } from '../../../calc/figure/index.ts';
import { layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { factValue, layersOf, materialOf, onePerLine, valueOf } from '../kit/layers.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** Families that are thinned with styrene. */
const families: ReadonlySet<string> = new Set(['polyester', 'vinyl_ester']);

const hasStyrene = (resin: MaterialFacts): boolean =>
  (factValue(resin.styrene)?.si ?? 0) > 0 || families.has(factValue(resin.family) ?? '');

const suffers = (core: MaterialFacts): boolean => core.attackedBy?.some(({ value }) => value === 'styrene') === true;

/** The first resin with styrene that wets the core or one of its neighbours. */
function styreneOn(context: RecipeContext, layers: readonly LaidLayer[], core: LaidLayer): MaterialFacts | undefined {
  for (const laid of [core, ...layers.slice(Math.max(0, core.index - 1), core.index + 2)]) {
    const name = valueOf(context.ask(layerResinName, laid.key)) ?? context.recipe.process?.resin;
    const resin = name === undefined ? undefined : context.bench.material(name);
    if (resin !== undefined && hasStyrene(resin)) return resin;
  }
  return undefined;
}

export const coreAttackedByStyrene = rule({
  name: 'core/attacked-by-styrene',
  severity: 'error',
  title: 'the resin dissolves the core',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const core of onePerLine(layers.filter(({ layer }) => layer.kind === 'core' || layer.kind === 'insert'))) {
      const material = materialOf(context, core);
      const resin = material !== undefined && suffers(material) ? styreneOn(context, layers, core) : undefined;
      if (material === undefined || resin === undefined) continue;
      context.report({
        at: `${core.path}.material`,
        message: text(
          '{resin} dissolves {core}: it holds styrene, and {material} does not stand it; an epoxy, or a core that resists styrene',
          { resin: resin.name, core: core.name, material: material.name },
        ),
        ...(context.recipe.process === undefined
          ? {}
          : {
              related: [
                {
                  at: { entry: context.recipe.entry, path: `${context.recipe.process.path}.resin` },
                  message: text('the resin'),
                },
              ],
            }),
      });
    }
  },
});
