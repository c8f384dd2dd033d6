import { text } from '../../../calc/figure/figure.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import type { LayerRow } from '../../../calc/report.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { coreOf, grooveOf, insertsOf, wrapsRound, wrapTarget } from '../../../calc/stack/order.ts';
import type { LayerName, Touch } from '../../protocol/layer-card.ts';
import { say, sayText } from '../text.ts';
import { translated } from '../translation.ts';
import type { CardBook } from './book.ts';
import { layerWords } from './stack-picture.ts';

/** What a layer touches: its neighbours below and above, what wraps round it or it wraps onto, and the core that it lies in. */
export function touchesOf(rows: readonly LayerRow[], { laid }: LayerRow, recipe: Recipe, book: CardBook): Touch[] {
  const layers = rows.map((row) => row.laid);
  const below = layers[laid.index - 1];
  const above = layers[laid.index + 1];
  const to = (side: Touch['side'], other: LaidLayer, how = '{layer}'): Touch => {
    const place = book.placeAt({ entry: recipe.entry, path: other.path });
    return {
      side,
      layer: nameOf(recipe, other),
      name: other.name,
      words: sayText(text(how, { layer: layerWords(other, book.style()) })),
      ...(place === undefined ? {} : { place }),
    };
  };
  const face = (side: Touch['side'], name: string, words: string): Touch => ({
    side,
    name,
    words: translated(words),
  });
  const target = wrapTarget(layers, laid);
  const core = coreOf(layers, laid) ?? grooveOf(layers, laid);
  return [
    below === undefined ? face('below', recipe.stack?.tool ?? say('the tool'), 'the tool face') : to('below', below),
    above === undefined ? face('above', say('nothing'), 'the bag face: the last layer laid') : to('above', above),
    ...(target === undefined ? [] : [to('around', target, 'it wraps onto the {layer}')]),
    ...(core === undefined ? [] : [to('around', core, 'it lies in the {layer}')]),
    ...wrapsRound(layers, laid)
      .filter((ply) => ply !== target)
      .map((ply) => to('around', ply, 'round its edge runs the {layer}')),
    ...insertsOf(layers, laid).map((insert) => to('around', insert, 'in it lies the {layer}')),
  ];
}

export const nameOf = (recipe: Recipe, { key }: LaidLayer): LayerName => ({
  recipe: recipe.name,
  ...(recipe.size === undefined ? {} : { size: recipe.size }),
  key,
});
