import type { LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import type { DocumentSymbol } from 'vscode-languageserver-protocol';
import type { Book } from '../grammar/generated/ast.ts';
import { type OutlineSymbol, outlineOf } from '../view/symbols.ts';
import { symbolKinds } from './symbol-kinds.ts';

/** textDocument/documentSymbol */
export class LayupDocumentSymbolProvider implements DocumentSymbolProvider {
  getSymbols(document: LangiumDocument): DocumentSymbol[] {
    return outlineOf(document.parseResult.value as Book).map(documentSymbol);
  }
}

function documentSymbol(symbol: OutlineSymbol): DocumentSymbol {
  return {
    name: symbol.name,
    detail: symbol.detail,
    kind: symbolKinds[symbol.sort],
    range: symbol.range,
    selectionRange: symbol.selection,
    children: symbol.children.map(documentSymbol),
  };
}
