import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { layerArealWeight, layerCloth } from '../../../calc/laminate/fraction.figure.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { arealWeight } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** Cloth of this weight shows its pattern through a gelcoat. */
const PRINTS_FROM: Usual = {
  habit: 'print',
  what: 'cloth that prints through',
  value: arealWeight(0.3),
  source:
    'trade magazine 2021: mat of 1 to 3 oz/ft2 behind the gelcoat, cured before the stack; 300 g/m2 common practice',
};

export const coatNoPrintBarrier = rule({
  name: 'coat/no-print-barrier',
  severity: 'warning',
  title: 'heavy cloth or core lies right behind the gelcoat',
  on: 'recipe',
  check(context) {
    const stack = context.ask(laidStack);
    const from = usual(context.bench, PRINTS_FROM);
    if (!isKnown(stack) || !isKnown(from)) return;
    stack.value.layers.forEach((coat, i) => {
      if (coat.layer.kind !== 'coat' || coat.layer.waxed === true) return;
      const next = stack.value.layers[i + 1];
      const gelcoat = coat.layer.material === undefined ? undefined : context.bench.material(coat.layer.material);
      if (gelcoat?.kind !== 'gelcoat' || next === undefined) return;
      const core = next.layer.kind === 'core';
      const cloth = context.ask(layerCloth, next.key);
      const weight = context.ask(layerArealWeight, next.key);
      const prints =
        core ||
        (isKnown(cloth) && cloth.value.style !== 'random' && isKnown(weight) && weight.value >= from.value - 1e-9);
      if (!prints) return;
      const shown = {
        layer: next.name,
        material: next.layer.material ?? next.name,
        coat: coat.name,
        ...(isKnown(weight) ? { weight: arealWeight(weight.value) } : {}),
      };
      context.report({
        at: next.path,
        message: core
          ? text(
              '{layer} lies right behind {coat}: every joint and cut of it shows; put a layer of mat between and let it cure',
              shown,
            )
          : text(
              '{layer} of {weight} lies right behind {coat}: its pattern prints through; put mat or tissue between',
              shown,
            ),
        related: [{ at: { entry: context.recipe.entry, path: coat.path }, message: text('the gelcoat') }],
      });
    });
  },
});
