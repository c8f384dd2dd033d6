import { allKnown, defineFigure, type Figure, ifKnown, isKnown, known, missing, reason } from '../figure/index.ts';
import { laidStack } from '../stack/laid.figure.ts';
import { grooveOf } from '../stack/order.ts';
import { layerThickness } from './thickness.figure.ts';

/** Thickness of all layers up to and with each, from the tool face; m. A layer that cannot be told takes those above it with it. */
const heights = defineFigure<ReadonlyMap<string, Figure<number>>>('heights', (bench) =>
  ifKnown(bench.ask(laidStack), (stack) => {
    const height = new Map<string, Figure<number>>();
    let soFar = known(0) as Figure<number>;
    for (const laid of stack.layers) {
      // an insert ends with the core that it lies in, a strip lies in its groove
      if (laid.layer.kind !== 'insert' && grooveOf(stack.layers, laid) === undefined) {
        const own = bench.ask(layerThickness, laid.key);
        soFar = isKnown(soFar) && isKnown(own) ? known(soFar.value + own.value) : missing(soFar, own);
      }
      height.set(laid.key, soFar);
    }
    return known(height);
  }),
);

/** Thickness of the stack from the tool face up to and with this layer where all of them lie, m. */
export const heightSoFar = defineFigure<number>('height_so_far', (bench, key) =>
  ifKnown(bench.ask(heights), (all) =>
    ifKnown(all.get(key) ?? known(0), (height) =>
      known(height, reason('computed', 'sum of the layers from the tool face, inserts and strips in grooves left out')),
    ),
  ),
);

/** Thickness of the whole stack where all layers lie over each other, m; what the bag has to go over. */
export const stackHeight = defineFigure<number>('stack_height', (bench) =>
  ifKnown(bench.ask(heights), (all) =>
    ifKnown(allKnown([...all.values()]), (each) =>
      known(Math.max(0, ...each), reason('computed', 'all layers over each other, from the tool face')),
    ),
  ),
);
