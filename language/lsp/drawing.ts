import type { Cancellation } from 'langium';
import { drawingLayers } from '../../calc/drawing/layers.ts';
import { isKnown } from '../../calc/figure/index.ts';
import type { WithAnalysis } from '../analysis/module.ts';
import { dxf } from '../export/dxf.ts';
import { sealedText } from '../export/made-by.ts';
import { screenSvg } from '../export/svg.ts';
import type { DrawingFileParams, DrawingFileResult, DrawingParams, DrawingResult } from '../protocol/drawing.ts';
import { drawingAlone, drawingOf, recipeAt, recipeCalled } from '../view/drawing/at-cursor.ts';
import { lessKnown } from '../view/drawing/picture.ts';
import { say } from '../view/text.ts';
import { builtDocument } from './built.ts';
import type { Machine } from './machine.ts';
import { cardBook } from './shown-book.ts';

/** Request `laybook/drawing` */
export const answerDrawing =
  (services: WithAnalysis) =>
  async (params: DrawingParams, token: Cancellation.CancellationToken): Promise<DrawingResult> => {
    const { uri, view, position, recipe, size, known } = params;
    const document = await builtDocument(services, uri, token);
    if (document === undefined) return { nothing: say('This file is not a recipe of the workspace.') };
    const book = cardBook(services);
    const found =
      recipe === undefined
        ? position && recipeAt(document, document.textDocument.offsetAt(position), book, size)
        : recipeCalled(document, recipe, book);
    const drawn = drawingOf(document, found, view, book);
    return drawn.picture === undefined ? drawn : { ...drawn, picture: lessKnown(drawn.picture, known) };
  };

/** Request `laybook/drawingFile` */
export const answerDrawingFile =
  (services: WithAnalysis, machine: Machine) =>
  async (params: DrawingFileParams, token: Cancellation.CancellationToken): Promise<DrawingFileResult> => {
    const { uri, view, recipe, format, without } = params;
    const document = await builtDocument(services, uri, token);
    const book = cardBook(services);
    const found = document && recipeCalled(document, recipe, book);
    if (found === undefined) return { nothing: say('The recipe is no longer in this file.') };
    const left = new Set(drawingLayers.filter((layer) => without.includes(layer)));
    const drawing = drawingAlone(services.analysis.bench(found.recipe), view, book, left);
    if (!isKnown(drawing)) return { nothing: say('It cannot be drawn yet.') };
    if (format === 'svg') return { text: sealedText(screenSvg(drawing.value, { styled: true, marked: true })) };
    if (format === 'dxf') return { text: sealedText(dxf(drawing.value)) };
    if (machine.pdfOf === undefined) return { nothing: say('An editor in a browser writes no PDF: export an SVG.') };
    return { base64: await machine.pdfOf(drawing.value) };
  };
