import type { Cancellation } from 'langium';
import type { WithAnalysis } from '../analysis/module.ts';
import { CannotCut, type CutFile, type CutOrder } from '../export/cut/cut-files.ts';
import { cutFilesOf } from '../export/cut/of-recipe.ts';
import { toBase64 } from '../protocol/base64.ts';
import {
  type CutFilesParams,
  type CutFilesResult,
  cutFormats,
  cutOrders,
  cutPapers,
  type WireCutFile,
} from '../protocol/cut-files.ts';
import { recipeCalled } from '../view/drawing/at-cursor.ts';
import { say } from '../view/text.ts';
import { builtDocument } from './built.ts';
import type { Machine } from './machine.ts';
import { cardBook } from './shown-book.ts';

/** Request `laybook/cutFiles` */
export const answerCutFiles =
  (services: WithAnalysis, { tiledPdf }: Machine) =>
  async (params: CutFilesParams, token: Cancellation.CancellationToken): Promise<CutFilesResult> => {
    const document = await builtDocument(services, params.uri, token);
    const book = cardBook(services);
    const found = document && recipeCalled(document, params, book);
    if (found === undefined) return { files: [], missing: [], nothing: say('The recipe is no longer in this file.') };
    // What an editor of another version asks for is answered as the nearest that there is.
    const format = cutFormats.find((each) => each === params.format) ?? 'svg';
    const order: CutOrder = {
      format,
      by: cutOrders.find((each) => each === params.by) ?? 'piece',
      paper: cutPapers.find((each) => each === params.paper) ?? 'a4',
      quantity: params.quantity,
    };
    try {
      const { files, missing } = await cutFilesOf(services.analysis.bench(found.recipe), order, {
        style: book.style(),
        ...(tiledPdf === undefined ? {} : { tiledPdf }),
      });
      return { files: files.map((file) => wire(file, format === 'pdf')), missing };
    } catch (error) {
      if (!(error instanceof CannotCut)) throw error;
      return { files: [], missing: [], nothing: error.message };
    }
  };

const wire = ({ name, bytes, words, notes }: CutFile, binary: boolean): WireCutFile => ({
  name,
  words: [words, ...notes].join(', '),
  ...(binary ? { base64: toBase64(bytes) } : { text: new TextDecoder().decode(bytes) }),
});
