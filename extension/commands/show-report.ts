import * as vscode from 'vscode';
import { openGiven } from '../open-given.ts';
import { recipeHere } from '../recipe-asked.ts';
import { type ReportDocuments, readReportParams } from '../report-documents.ts';

/** Opens the report of the recipe that a lens names; without one, of the recipe that the cursor stands in. */
export async function showReport(reports: ReportDocuments, given?: unknown): Promise<void> {
  await openGiven(given);
  const params = readReportParams(given) ?? recipeHere();
  if (params !== undefined) return reports.show(params);
  await vscode.window.showInformationMessage(
    vscode.l10n.t('Open a file with a recipe first, then ask for its report.'),
  );
}
