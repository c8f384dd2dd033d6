import { allKnown, type Bench, type Figure, isKnown, known, whenKnown } from '../figure/index.ts';
import { densityOf, layerFibreDensity, materialAt } from '../laminate/fraction.figure.ts';
import { layerDryMass, layerResin, mass } from '../laminate/mass.figure.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { laidStack } from '../stack/laid.figure.ts';
import { isCloth } from '../stack/order.ts';
import type { PlannedMass } from './explain.ts';

/** The plan of a part's mass, as `explainMass` asks for it: cloth and the resin in it apart from all else. */
export function massPlan(bench: Bench): PlannedMass | undefined {
  const resin = bench.recipe.process?.resin;
  const figure: Figure<PlannedMass> = whenKnown(
    {
      total: bench.ask(mass),
      stack: bench.ask(laidStack),
      liquid: materialAt(bench, resin, 'the resin', inRecipe(bench, '')),
    },
    ({ total, stack, liquid }) => {
      const cloth = stack.layers.filter(isCloth);
      const inputs = {
        dry: allKnown(cloth.map(({ key }) => bench.ask(layerDryMass, key))),
        wet: allKnown(cloth.map(({ key }) => bench.ask(layerResin, key))),
        fibre: allKnown(cloth.map(({ key }) => bench.ask(layerFibreDensity, key))),
        resinDensity: densityOf(liquid),
      };
      return whenKnown(inputs, ({ dry, wet, fibre, resinDensity }) => {
        const kilograms = dry.reduce((sum, each) => sum + each, 0);
        const volume = dry.reduce((sum, each, i) => sum + each / (fibre[i] ?? 1), 0);
        return known({
          total,
          fibre: kilograms,
          resinInCloth: wet.reduce((sum, each) => sum + each.total, 0),
          fibreDensity: kilograms / volume,
          resinDensity,
        });
      });
    },
  );
  return isKnown(figure) ? figure.value : undefined;
}
