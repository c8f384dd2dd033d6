import type { Cancellation } from 'langium';
import type { WithAnalysis } from '../analysis/module.ts';
import type { LayerCardParams, LayerCardResult } from '../protocol/layer-card.ts';
import { cardAt, cardOf } from '../view/card/at-cursor.ts';
import { say } from '../view/text.ts';
import { builtDocument } from './built.ts';
import { cardBook } from './shown-book.ts';

/** Request `laybook/layerCard` */
export const answerLayerCard =
  (services: WithAnalysis) =>
  async (
    { uri, position, layer }: LayerCardParams,
    token: Cancellation.CancellationToken,
  ): Promise<LayerCardResult> => {
    const document = await builtDocument(services, uri, token);
    if (document === undefined) return { nothing: say('This file is not a recipe of the workspace.') };
    const book = cardBook(services);
    if (layer !== undefined) return cardOf(document, layer, book);
    return position === undefined
      ? { nothing: say('No layer was named.') }
      : cardAt(document, document.textDocument.offsetAt(position), book);
  };
