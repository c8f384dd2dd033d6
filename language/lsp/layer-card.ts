import type { Connection } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import { type LayerCardParams, type LayerCardResult, layerCardRequest } from '../protocol/layer-card.ts';
import { cardAt, cardOf } from '../view/card/at-cursor.ts';
import { say } from '../view/text.ts';
import { cardBook } from './book-views.ts';
import { builtDocument } from './built.ts';

/** Request `laybook/layerCard` */
export function serveLayerCards(connection: Connection, services: WithAnalysis): void {
  connection.onRequest(
    layerCardRequest,
    async ({ uri, position, layer }: LayerCardParams, token): Promise<LayerCardResult> => {
      const document = await builtDocument(services, uri, token);
      if (document === undefined) return { nothing: say('This file is not a recipe of the workspace.') };
      const book = cardBook(services);
      if (layer !== undefined) return cardOf(document, layer, book);
      return position === undefined
        ? { nothing: say('No layer was named.') }
        : cardAt(document, document.textDocument.offsetAt(position), book);
    },
  );
}
