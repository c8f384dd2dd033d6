import type { AstNodeDescription } from 'langium';
import { DefaultWorkspaceSymbolProvider } from 'langium/lsp';
import { SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver-protocol';
import { symbolKinds } from './symbol-kinds.ts';

const kinds: Readonly<Record<string, SymbolKind>> = {
  Material: symbolKinds.material,
  Tool: symbolKinds.tool,
  Recipe: symbolKinds.recipe,
  Shop: symbolKinds.shop,
  BuildRecord: symbolKinds.record,
};

/** workspace/symbol: the entries of the book. */
export class LayupWorkspaceSymbolProvider extends DefaultWorkspaceSymbolProvider {
  protected override getWorkspaceSymbol(description: AstNodeDescription): WorkspaceSymbol | undefined {
    const symbol = super.getWorkspaceSymbol(description);
    return symbol === undefined ? undefined : { ...symbol, kind: kinds[description.type] ?? SymbolKind.Object };
  }
}
