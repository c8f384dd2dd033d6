import * as vscode from 'vscode';
import {
  type Candidate,
  type ComparedRecipe,
  type CompareMaterialsParams,
  type CompareMaterialsResult,
  compareMaterialsRequest,
  type RecipeChange,
} from '../../language/protocol/look-up.ts';
import { ask, type Server } from '../server.ts';
import { askedMaterial } from './asked.ts';

interface CandidateItem extends vscode.QuickPickItem {
  readonly candidate?: Candidate;
}

/**
 * What recipes would come to with another material: a list that shows the changes and edits nothing. The one chosen is shown once
 * more, and only a second choice types it into a recipe.
 */
export async function compareMaterials(server: Server, given?: unknown): Promise<void> {
  const title = vscode.l10n.t('Compare materials');
  const material = await askedMaterial(server, given, title);
  if (material === undefined) return;
  const params: CompareMaterialsParams = { material };
  const found = await vscode.window.withProgress(
    { location: vscode.ProgressLocation.Window, title: vscode.l10n.t('Comparing materials') },
    () => ask<CompareMaterialsResult>(server, compareMaterialsRequest, params),
  );
  const answer = hereFirst(found);
  if (answer.candidates.length === 0) {
    const none =
      answer.recipes.length === 0
        ? vscode.l10n.t('No recipe uses {0}.', material)
        : vscode.l10n.t('There is no other material of the kind of {0}.', material);
    await vscode.window.showInformationMessage(none);
    return;
  }
  const chosen = await vscode.window.showQuickPick(candidateItems(answer), {
    title: vscode.l10n.t('With another material in the place of {0}', material),
    placeHolder: vscode.l10n.t('Nothing is edited yet: choose a material to see more'),
    matchOnDescription: true,
    matchOnDetail: true,
  });
  if (chosen?.candidate !== undefined) await decide(material, chosen.candidate, answer);
}

/** The recipes of the file that is looked at come first. */
function hereFirst({ material, recipes, candidates }: CompareMaterialsResult): CompareMaterialsResult {
  const here = vscode.window.activeTextEditor?.document.uri.toString();
  const names = new Set(
    recipes.flatMap(({ recipe, uri }) => (vscode.Uri.parse(uri).toString() === here ? [recipe] : [])),
  );
  const sorted = <Each extends { readonly recipe: string }>(list: readonly Each[]): Each[] =>
    [...list].sort((a, b) => Number(names.has(b.recipe)) - Number(names.has(a.recipe)));
  return {
    material,
    recipes: sorted(recipes),
    candidates: candidates.map((candidate) => ({ ...candidate, changes: sorted(candidate.changes) })),
  };
}

/** What fits into one line of the list; the second list tells of every recipe. */
const mostTold = 2;

function fewOf(told: readonly string[]): string {
  const left = told.length - mostTold;
  const some = told.slice(0, mostTold).join('; ');
  if (left <= 0) return some;
  return left === 1
    ? vscode.l10n.t('{0}; and 1 more recipe', some)
    : vscode.l10n.t('{0}; and {1} more recipes', some, left);
}

/** First the material as it is, then those of the workspace, then those of the stock library. */
function candidateItems({ material, recipes, candidates }: CompareMaterialsResult): CandidateItem[] {
  const group = (label: string): CandidateItem => ({ label, kind: vscode.QuickPickItemKind.Separator });
  const now = recipes.map(
    ({ recipe, figures: { mass, cost, thickness } }) => `${recipe}: ${mass}, ${cost}, ${thickness}`,
  );
  const [own, stock] = [candidates.filter((each) => !each.stock), candidates.filter((each) => each.stock)];
  return [
    { label: material ?? '', description: vscode.l10n.t('as it is'), detail: fewOf(now) },
    ...(own.length === 0 ? [] : [group(vscode.l10n.t('workspace')), ...own.map(candidateItem)]),
    ...(stock.length === 0 ? [] : [group(vscode.l10n.t('stock library, typical values')), ...stock.map(candidateItem)]),
  ];
}

function candidateItem(candidate: Candidate): CandidateItem {
  return {
    label: candidate.name,
    ...(candidate.title === undefined ? {} : { description: candidate.title }),
    detail: fewOf(candidate.changes.map((change) => changeWords(change, candidate.changes.length > 1))),
    candidate,
  };
}

/** `sled_deck: mass +120 g, cost -3.10 EUR, thickness the same` */
function changeWords(
  { recipe, changes: { mass, cost, thickness }, newFindings }: RecipeChange,
  named: boolean,
): string {
  const words = vscode.l10n.t('mass {0}, cost {1}, thickness {2}', mass, cost, thickness);
  const found = newFindings.length === 0 ? '' : ` $(warning) ${newFindings.join(', ')}`;
  return `${named ? `${recipe}: ` : ''}${words}${found}`;
}

interface DecisionItem extends vscode.QuickPickItem {
  readonly recipe?: ComparedRecipe;
}

async function decide(material: string, candidate: Candidate, { recipes }: CompareMaterialsResult): Promise<void> {
  const keep: DecisionItem = {
    label: vscode.l10n.t('Keep {0}', material),
    description: vscode.l10n.t('edits nothing'),
  };
  const items = recipes
    .filter(({ ranges }) => ranges.length > 0)
    .map((recipe): DecisionItem => {
      const change = candidate.changes.find((each) => each.recipe === recipe.recipe);
      return {
        label: vscode.l10n.t('Use {0} in {1}', candidate.name, recipe.recipe),
        description:
          recipe.ranges.length === 1
            ? vscode.l10n.t('edits 1 place')
            : vscode.l10n.t('edits {0} places', recipe.ranges.length),
        ...(change === undefined
          ? {}
          : { detail: `${changeWords(change, false)}${change.missing === undefined ? '' : `. ${change.missing}`}` }),
        recipe,
      };
    });
  const chosen = await vscode.window.showQuickPick([keep, ...items], {
    title: vscode.l10n.t('{0} in the place of {1}', candidate.name, material),
  });
  if (chosen?.recipe !== undefined) await replace(material, candidate.name, chosen.recipe);
}

/** Types the name over in one recipe, unless its text has changed since it was looked at. */
async function replace(from: string, to: string, { uri, ranges }: ComparedRecipe): Promise<void> {
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
  const edit = new vscode.WorkspaceEdit();
  for (const { start, end } of ranges) {
    const range = new vscode.Range(start.line, start.character, end.line, end.character);
    if (document.getText(range) !== from) {
      await vscode.window.showWarningMessage(vscode.l10n.t('The recipe has been changed meanwhile: compare again.'));
      return;
    }
    edit.replace(document.uri, range, to);
  }
  await vscode.workspace.applyEdit(edit);
  await vscode.window.showTextDocument(document, { preserveFocus: false });
}
