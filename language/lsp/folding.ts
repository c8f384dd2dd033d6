import type { LangiumDocument } from 'langium';
import type { FoldingRangeProvider, LangiumServices } from 'langium/lsp';
import type { FoldingRange } from 'vscode-languageserver-protocol';
import { tokenKinds } from '../grammar/tokens.ts';
import { foldingsOf } from '../view/folding.ts';
import { plainTokensOf } from './plain-tokens.ts';

/** textDocument/foldingRange */
export class LayupFoldingProvider implements FoldingRangeProvider {
  private readonly services: LangiumServices;

  constructor(services: LangiumServices) {
    this.services = services;
  }

  getFoldingRanges({ textDocument }: LangiumDocument): FoldingRange[] {
    const kinds = tokenKinds(this.services.parser.Lexer.definition);
    return foldingsOf(textDocument.getText(), plainTokensOf(this.services, textDocument), kinds).map((fold) => ({
      startLine: fold.first,
      endLine: fold.last,
      ...(fold.kind === undefined ? {} : { kind: fold.kind }),
    }));
  }
}
