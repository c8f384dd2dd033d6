import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import type { RecipeContext } from '../rule.ts';
import { rule } from '../rule.ts';

/** Metals are told by what they weigh and how stiff they are: heavier than glass plate, stiffer than wood. */
const METAL = { density: 2400, modulus: 40e9 };
/** Carbon is told by its fibre: stiff as no glass is, and light. */
const CARBON = { density: 2100, modulus: 150e9 };

export const bondDissimilar = rule({
  name: 'bond/dissimilar',
  severity: 'warning',
  title: 'carbon touches a metal insert',
  on: 'recipe',
  check(context) {
    const stack = context.ask(laidStack);
    if (!isKnown(stack)) return;
    const { layers } = stack.value;
    for (const insert of layers) {
      if (insert.layer.kind !== 'insert' || !isMetal(context, insert)) continue;
      const touching = [layers.slice(0, insert.index).findLast(isCloth), layers.slice(insert.index + 1).find(isCloth)];
      const carbon = touching.find((laid) => laid !== undefined && isCarbon(context, laid));
      if (carbon === undefined) continue;
      const shown = { insert: insert.name, metal: insert.layer.material ?? '', carbon: carbon.name };
      context.report({
        at: insert.path,
        message: text(
          '{carbon} touches {insert} of {metal}: carbon and metal make a cell, and the metal corrodes; a ply of glass or a coat of sealant between them',
          shown,
        ),
        related: [
          { at: { entry: context.recipe.entry, path: carbon.path }, message: text('{carbon} is carbon', shown) },
        ],
      });
    }
  },
});

function isMetal(context: RecipeContext, { layer }: LaidLayer): boolean {
  const material = layer.material === undefined ? undefined : context.bench.material(layer.material);
  const [density, modulus] = [material?.density?.value, material?.modulus?.[0]?.value];
  return (
    density !== undefined &&
    density !== UNKNOWN &&
    density.si > METAL.density &&
    modulus !== undefined &&
    modulus !== UNKNOWN &&
    modulus.value.si > METAL.modulus
  );
}

function isCarbon(context: RecipeContext, { layer }: LaidLayer): boolean {
  const cloth = layer.material === undefined ? undefined : context.bench.material(layer.material);
  const name = cloth?.fibre?.value;
  const fibre = name === undefined || name === UNKNOWN ? undefined : context.bench.material(name);
  const [density, modulus] = [fibre?.density?.value, fibre?.modulus?.[0]?.value];
  return (
    density !== undefined &&
    density !== UNKNOWN &&
    density.si < CARBON.density &&
    modulus !== undefined &&
    modulus !== UNKNOWN &&
    modulus.value.si > CARBON.modulus
  );
}
