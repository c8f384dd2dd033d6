import * as vscode from 'vscode';
import { type FindUsesResult, findUsesRequest, type UsingRecipe } from '../../language/protocol/look-up.ts';
import type { WirePlace } from '../../language/protocol/place.ts';
import { openPlace } from '../open-place.ts';
import { ask, type Server } from '../server.ts';
import { askedMaterial } from './asked.ts';

interface PlaceItem extends vscode.QuickPickItem {
  readonly place?: WirePlace;
}

/** The recipes that use a material, with what they weigh and cost, and the lines that name it; goes to the one chosen. */
export async function findUses(server: Server, given?: unknown): Promise<void> {
  const title = vscode.l10n.t('Find recipes that use a material');
  const material = await askedMaterial(server, given, title);
  if (material === undefined) return;
  const { recipes } = await ask<FindUsesResult>(server, findUsesRequest, { material });
  if (recipes.length === 0) {
    await vscode.window.showInformationMessage(vscode.l10n.t('No recipe uses {0}.', material));
    return;
  }
  const chosen = await vscode.window.showQuickPick(recipes.flatMap(itemsOf), {
    title: vscode.l10n.t('Recipes that use {0}', material),
    placeHolder: vscode.l10n.t('Choose a line to go there'),
    matchOnDescription: true,
  });
  if (chosen?.place !== undefined) await openPlace(chosen.place);
}

function itemsOf({ recipe, size, place, uses, figures }: UsingRecipe): PlaceItem[] {
  const { mass, cost, thickness } = figures;
  const head: PlaceItem = {
    label: size === undefined ? recipe : vscode.l10n.t('{0}, size {1}', recipe, size),
    description: [mass, cost, thickness].join(', '),
    detail: vscode.l10n.t('mass {0}, cost {1}, thickness in the middle {2}', mass, cost, thickness),
    ...(place === undefined ? {} : { place }),
  };
  // the lines are the same for every size
  const lines = size === undefined ? uses : [];
  return [
    head,
    ...lines.map(
      (use): PlaceItem => ({ label: `$(arrow-right) ${use.words}`, description: use.place.name, place: use.place }),
    ),
  ];
}
