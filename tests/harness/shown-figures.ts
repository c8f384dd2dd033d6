import type { CodeLens, InlayHint } from 'vscode-languageserver-protocol';
import { analysisModule, type WithAnalysis } from '../../language/analysis/module.ts';
import type { MoreServices } from '../../language/book/services.ts';
import { type FigureServices, figuresModule } from '../../language/lsp/figures-module.ts';
import { openBook, type TestBook } from './book.ts';

type Figures = Omit<WithAnalysis, keyof TestBook['services']> & FigureServices;

/** What an editor shows beside the lines of a file. */
export interface ShownHint {
  readonly line: number;
  readonly character: number;
  /** without the mark */
  readonly words: string;
  readonly old: boolean;
  readonly tooltips: readonly string[];
}

export interface ShownLens {
  readonly line: number;
  readonly title: string;
  readonly command: string;
  readonly argument: unknown;
}

export interface FigureBook extends TestBook<Figures> {
  setting(values: object): void;
  /** The cursor leaves the line that was typed: what was held back is told. */
  leaveLine(): Promise<void>;
  /** Something in a line cannot be read, whether the editor is told so already or not. */
  isUnread(file: string, line: number): Promise<boolean>;
  hints(file: string): ShownHint[];
  lenses(file: string): Promise<ShownLens[]>;
}

const everywhere = { start: { line: 0, character: 0 }, end: { line: 1e6, character: 0 } };
/** holds the place of the mark of old figures */
export const noMark = '\u2007';

/** A book whose files are open in an editor that shows hints and lenses. */
export async function openFigureBook(files: Readonly<Record<string, string>>): Promise<FigureBook> {
  const modules = [analysisModule as MoreServices<Figures>, figuresModule as MoreServices<Figures>];
  const book = await openBook<Figures>(files, { modules, open: Object.keys(files) });
  const { lsp, settings } = book.services;
  return {
    ...book,
    setting: (values) => settings.updateConfiguration({ settings: { laybook: values } }),
    async leaveLine() {
      book.services.typing.leave();
      await book.shared.workspace.WorkspaceLock.read(() => undefined);
    },
    async isUnread(file, line) {
      const document = book.document(file);
      const found = await book.services.analysis.findings(document);
      return found.some(
        ({ rule, span }) => /^(line|unit)\//.test(rule) && document.textDocument.positionAt(span.offset).line === line,
      );
    },
    hints(file) {
      const document = book.document(file);
      const answer = lsp.InlayHintProvider?.getInlayHints(document, {
        textDocument: { uri: document.uri.toString() },
        range: everywhere,
      });
      return (answer as InlayHint[]).map(shownHint);
    },
    async lenses(file) {
      const document = book.document(file);
      const answer = await lsp.CodeLensProvider?.provideCodeLens(document, {
        textDocument: { uri: document.uri.toString() },
      });
      return (answer ?? []).map(shownLens);
    },
  };
}

export function shownHint({ position: { line, character }, label }: InlayHint): ShownHint {
  if (typeof label === 'string') throw new Error('the parts of a hint have tooltips of their own');
  const mark = label.at(-1)?.value;
  if (mark !== '?' && mark !== noMark) throw new Error(`a hint ends with its mark, not with "${mark}"`);
  return {
    line,
    character,
    words: label
      .slice(0, -1)
      .map(({ value }) => value)
      .join(''),
    old: mark === '?',
    tooltips: label.slice(0, -1).map(({ tooltip }) => (typeof tooltip === 'object' ? tooltip.value : String(tooltip))),
  };
}

export const shownLens = ({ range, command }: CodeLens): ShownLens => ({
  line: range.start.line,
  title: command?.title ?? '',
  command: command?.command ?? '',
  argument: command?.arguments?.[0],
});
