import { cannot, definePick, ifKnown, isKnown, known, reason, text, typed } from '../figure/index.ts';
import { onceFor } from '../kept.ts';
import { UNKNOWN } from '../model/index.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { expandStack, MOST_LAID_LAYERS } from './expand.ts';
import type { LaidLayer, LaidStack } from './laid.ts';

/** The stack layer by layer, repeats and mirrors worked out. */
export const laidStack = definePick<LaidStack>('laid_stack', (bench) =>
  ifKnown(typed(bench.recipe.stack, 'the stack', inRecipe(bench, '')), (stack) => {
    const laid = expandStack(stack, (name) => {
      const cloth = bench.material(name)?.cloth?.value;
      return cloth === UNKNOWN ? undefined : cloth;
    });
    const tooMany = laid.problems.find((problem) => problem.kind === 'too-many-layers');
    if (tooMany === undefined) return known(laid);
    const shown = { count: tooMany.count ?? 0, most: MOST_LAID_LAYERS };
    const words = text('the stack would have {count} layers; more than {most} are not worked out', shown);
    return cannot(reason('computed', words, { at: inRecipe(bench, stack.path) }));
  }),
);

const byKey = onceFor(
  ({ layers }: LaidStack): ReadonlyMap<string, LaidLayer> => new Map(layers.map((layer) => [layer.key, layer])),
);

/** One laid layer by its key. */
export const laidLayer = definePick<LaidLayer>('laid_layer', (bench, key) => {
  const stack = bench.ask(laidStack);
  if (!isKnown(stack)) return stack;
  const layer = byKey(stack.value).get(key);
  if (layer !== undefined) return known(layer);
  return cannot(
    reason('typed', text('no layer is called {name}', { name: key }), {
      at: inRecipe(bench, bench.recipe.stack?.path ?? ''),
    }),
  );
});
