import * as vscode from 'vscode';
import type { ReportParams } from '../../language/protocol/report.ts';
import { type ReportDocuments, readReportParams } from '../report-documents.ts';

/** Opens the report of the recipe that a lens names; without one, of the recipe that the cursor stands in. */
export async function showReport(reports: ReportDocuments, given?: unknown): Promise<void> {
  const params = readReportParams(given) ?? recipeAtCursor();
  if (params !== undefined) return reports.show(params);
  await vscode.window.showInformationMessage(
    vscode.l10n.t('Open a file with a recipe first, then ask for its report.'),
  );
}

const head = /^\s*recipe\s+([A-Za-z_]\w*)/;

/** The recipe whose head stands last at or above the cursor; in front of all recipes, the first one. */
function recipeAtCursor(): ReportParams | undefined {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== 'layup') return undefined;
  const { document, selection } = editor;
  let found: string | undefined;
  for (let line = 0; line < document.lineCount; line++) {
    const name = head.exec(document.lineAt(line).text)?.[1];
    if (name === undefined) continue;
    if (line > selection.active.line && found !== undefined) break;
    found = name;
  }
  return found === undefined ? undefined : { uri: document.uri.toString(), recipe: found };
}
