import { currency, layerCost } from '../../../calc/cost/price.figure.ts';
import { isKnown } from '../../../calc/figure/figure.ts';
import { type Bench, quantity } from '../../../calc/figure/index.ts';
import { heightSoFar } from '../../../calc/laminate/height.figure.ts';
import { layerMass } from '../../../calc/laminate/mass.figure.ts';
import { LENGTH, MASS, MONEY } from '../../../calc/quantity/index.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { HintChoice } from '../../protocol/hint-kinds.ts';
import { type Style, say, show } from '../text.ts';
import { type HintPart, partOf, sumOf, valuesOf } from './part.ts';

/** What a line of the stack comes to, over all the times that it is laid: wet mass, thickness so far, cost. */
export function layerParts(bench: Bench, laid: readonly LaidLayer[], chosen: HintChoice, style: Style): HintPart[] {
  const ask = (definition: typeof layerMass, layers = laid) =>
    layers.map(({ key, name }) => ({ of: name, figure: bench.ask(definition, key) }));
  const times = laid.length;
  const parts: (HintPart | undefined)[] = [];
  if (chosen.mass) {
    const figures = ask(layerMass);
    parts.push(
      partOf({ kind: 'mass', what: 'mass', figures }, () => {
        const mass = show(quantity(sumOf(valuesOf(figures)), MASS), style);
        return times > 1 ? say('{mass} in {times}', { mass, times }) : mass;
      }),
    );
  }
  if (chosen.thickness) {
    // what a mirror lays lies elsewhere
    const own = laid.filter(({ mirrored }) => mirrored === undefined);
    const figures = ask(heightSoFar, own.slice(-1));
    parts.push(
      partOf({ kind: 'thickness', what: 'thickness', figures }, () =>
        say('to {height}', { height: quantity(valuesOf(figures)[0] ?? 0, LENGTH) }, style),
      ),
    );
  }
  if (chosen.cost) {
    const unit = bench.ask(currency);
    const figures = ask(layerCost);
    const money = isKnown(unit) ? unit.value : undefined;
    parts.push(
      partOf({ kind: 'cost', what: 'cost', figures }, () =>
        show(quantity(sumOf(valuesOf(figures)), MONEY, money), style),
      ),
    );
  }
  return parts.filter((part) => part !== undefined);
}
