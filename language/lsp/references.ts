import { AstUtils, type LangiumDocument } from 'langium';
import { DefaultReferencesProvider } from 'langium/lsp';
import type { CancellationToken, Location, ReferenceParams } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import * as ast from '../grammar/generated/ast.ts';
import { leafAt } from '../view/leaves.ts';
import { locationOf } from './diagnostics.ts';

/** References of names; of the number of a lot, every record that names it: the parts that contain it. */
export class LayupReferencesProvider extends DefaultReferencesProvider {
  private readonly services: WithAnalysis;

  constructor(services: WithAnalysis) {
    super(services);
    this.services = services;
  }

  override async findReferences(
    document: LangiumDocument,
    params: ReferenceParams,
    token?: CancellationToken,
  ): Promise<Location[]> {
    const lot = lotAt(document, document.textDocument.offsetAt(params.position));
    if (lot === undefined) return super.findReferences(document, params, token);
    const { records } = this.services.analysis.shelf();
    return records.ofLot(lot.material, lot.code).flatMap((record) => {
      const line = record.lots.find(({ material, code }) => material === lot.material && code === lot.code);
      const place = line && this.services.analysis.locate({ entry: record.entry, path: line.path });
      const location = place && locationOf(this.services, place.uri, place.span);
      return location === undefined ? [] : [location];
    });
  }
}

/** The lot whose number stands at an offset. */
function lotAt(
  document: LangiumDocument,
  offset: number,
): { readonly material: string; readonly code: string } | undefined {
  const leaf = leafAt(document, offset);
  const lot = leaf && AstUtils.getContainerOfType(leaf.astNode, ast.isLot);
  if (leaf === undefined || lot?.material === undefined || lot.code === undefined) return undefined;
  return /^["']/.test(leaf.text) ? { material: lot.material.$refText, code: lot.code } : undefined;
}
