import type { AnalysisServices, WithAnalysis } from '../analysis/module.ts';
import type { MoreServices } from '../book/services.ts';
import { DocumentHints } from '../view/hints/hints.ts';
import type { HintPart } from '../view/hints/part.ts';
import { DocumentLenses } from '../view/lens/lenses.ts';
import type { LensPart } from '../view/lens/parts.ts';
import { LayupCodeLenses } from './code-lens.ts';
import { LayupInlayHints } from './inlay-hints.ts';
import { hoverBook } from './shown-book.ts';
import { ShownFigures } from './shown-figures.ts';

/** Figures that stand beside the text. */
export interface FigureServices {
  readonly shownFigures: {
    readonly hints: ShownFigures<HintPart>;
    readonly lenses: ShownFigures<LensPart>;
  };
}

export type WithFigures = WithAnalysis & FigureServices;

export const figuresModule: MoreServices<AnalysisServices & FigureServices> = {
  shownFigures: {
    hints: (services) =>
      new ShownFigures(services, () => new DocumentHints(hoverBook(services), () => services.settings.current.hints)),
    lenses: (services) =>
      new ShownFigures(services, () => new DocumentLenses(hoverBook(services), () => services.settings.current.lens)),
  },
  lsp: {
    InlayHintProvider: (services) => new LayupInlayHints(services.shownFigures.hints, hoverBook(services)),
    CodeLensProvider: (services) => new LayupCodeLenses(services, services.shownFigures.lenses),
  },
};
