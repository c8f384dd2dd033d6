import type { MaterialFacts, Usual } from '../../../calc/figure/index.ts';
import { layerArealWeight, layerCloth, layerResinName } from '../../../calc/laminate/fraction.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { RecipeContext } from '../rule.ts';
import { habitOf } from './habit.ts';
import { factValue, valueOf } from './layers.ts';
import { arealWeight } from './shown.ts';

/** Families that are thinned with styrene. */
const withStyrene: ReadonlySet<string> = new Set(['polyester', 'vinyl_ester']);

/** The resin that a layer is wet out with. */
export function resinOf(context: RecipeContext, laid: LaidLayer): MaterialFacts | undefined {
  const name = valueOf(context.ask(layerResinName, laid.key)) ?? context.recipe.process?.resin;
  return name === undefined ? undefined : context.bench.material(name);
}

export const hasStyrene = (resin: MaterialFacts | undefined): boolean =>
  resin !== undefined && ((factValue(resin.styrene)?.si ?? 0) > 0 || withStyrene.has(factValue(resin.family) ?? ''));

export const wetWithStyrene = (context: RecipeContext, laid: LaidLayer): boolean => hasStyrene(resinOf(context, laid));

const ROVING: Usual = {
  habit: 'roving',
  what: 'weight from which a woven cloth is a roving',
  value: arealWeight(0.5),
  source: 'common practice',
};

/** A heavy woven cloth. */
export const isRoving = (context: RecipeContext, laid: LaidLayer): boolean =>
  valueOf(context.ask(layerCloth, laid.key))?.style === 'woven' &&
  (valueOf(context.ask(layerArealWeight, laid.key)) ?? 0) >= habitOf(context.bench, ROVING) - 1e-9;
