import { type Cancellation, DocumentState, type LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, CodeLensParams } from 'vscode-languageserver-protocol';
import type { LayupServices } from '../book/services.ts';
import type { NextFinding, ReportParams } from '../protocol/report.ts';
import { planCommand } from '../view/hover/plan-link.ts';
import type { Told } from '../view/kept/kept-lines.ts';
import { type LensPart, lensTitle } from '../view/lens/parts.ts';
import type { ShownFigures } from './shown-figures.ts';

/** textDocument/codeLens: one line above each recipe. Each opens what it names. */
export class LayupCodeLenses implements CodeLensProvider {
  private readonly services: LayupServices;
  private readonly figures: ShownFigures<LensPart>;

  constructor(services: LayupServices, figures: ShownFigures<LensPart>) {
    this.services = services;
    this.figures = figures;
  }

  async provideCodeLens(
    document: LangiumDocument,
    _params: CodeLensParams,
    token?: Cancellation.CancellationToken,
  ): Promise<CodeLens[]> {
    // the findings are counted
    await this.services.shared.workspace.DocumentBuilder.waitUntil(DocumentState.Validated, document.uri, token);
    return this.figures.tell(document).flatMap((told) => lensesOf(document, told));
  }
}

function lensesOf(document: LangiumDocument, { line, parts }: Told<LensPart>): CodeLens[] {
  const { textDocument } = document;
  const range = { start: textDocument.positionAt(line.start), end: textDocument.positionAt(line.end) };
  const uri = document.uri.toString();
  return parts.map(({ part, old }): CodeLens => {
    const { kind, recipe } = part;
    const title = lensTitle(part, old);
    if (kind === 'findings') {
      const from: NextFinding = { uri, line: range.start.line };
      return { range, command: { title, command: 'laybook.nextFinding', arguments: [from] } };
    }
    if (kind === 'plan') return { range, command: { title, command: planCommand, arguments: [{ uri, recipe }] } };
    const report: ReportParams = { uri, recipe, part: kind };
    return { range, command: { title, command: 'laybook.showReport', arguments: [report] } };
  });
}
