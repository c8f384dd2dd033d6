import { type Cancellation, interruptAndCheck, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { comparedFigures } from '../../calc/compare/compare.ts';
import { withMaterial } from '../../calc/compare/with-material.ts';
import type { Recipe } from '../../calc/model/index.ts';
import type { WithAnalysis } from '../analysis/module.ts';
import type { Shelf } from '../analysis/shelf.ts';
import {
  type Candidate,
  type ComparedRecipe,
  type CompareMaterialsParams,
  type CompareMaterialsResult,
  compareMaterialsRequest,
  type FindUsesResult,
  findUsesRequest,
  type MaterialAsked,
  type MaterialsResult,
  materialsRequest,
  type UsingRecipe,
} from '../protocol/look-up.ts';
import type { Finding } from '../rules/finding.ts';
import { choices, materialAt, type PlacedRecipe, recipesWith } from '../view/look-up/asked.ts';
import { candidatesFor } from '../view/look-up/candidates.ts';
import { changeWith, newFindings, told } from '../view/look-up/compare.ts';
import { entryOf, type TypedUse, usesIn } from '../view/look-up/uses.ts';
import { builtDocument } from './built.ts';
import { rangeOf } from './diagnostics.ts';
import { cardBook } from './shown-book.ts';

type Token = Cancellation.CancellationToken;

/** Requests `laybook/materials`, `laybook/findUses` and `laybook/compareMaterials` */
export function serveLookingUp(connection: Connection, services: WithAnalysis): void {
  connection.onRequest(materialsRequest, async (asked: MaterialAsked, token): Promise<MaterialsResult> => {
    const here = await materialOf(services, asked, token);
    const { analysis } = services;
    return {
      ...(here === undefined ? {} : { here }),
      materials: choices(analysis.shelf(), analysis.stockNames('material')),
    };
  });
  connection.onRequest(findUsesRequest, async (asked: MaterialAsked, token): Promise<FindUsesResult> => {
    const material = await materialOf(services, asked, token);
    if (material === undefined) return { recipes: [] };
    const shelf = services.analysis.shelf();
    return {
      material,
      recipes: recipesWith(shelf, material).map((found) => usingRecipe(services, found, material, shelf)),
    };
  });
  connection.onRequest(compareMaterialsRequest, (asked: CompareMaterialsParams, token) =>
    compare(services, asked, token),
  );
}

async function materialOf(
  services: WithAnalysis,
  { material, at }: MaterialAsked,
  token: Token,
): Promise<string | undefined> {
  if (material !== undefined) {
    await services.shared.workspace.WorkspaceManager.ready;
    return services.analysis.shelf().material(material)?.name;
  }
  const document = at && (await builtDocument(services, at.uri, token));
  return at && document && materialAt(document, document.textDocument.offsetAt(at.position));
}

function usingRecipe(
  services: WithAnalysis,
  { recipe, placed }: PlacedRecipe,
  material: string,
  shelf: Shelf,
): UsingRecipe {
  const book = cardBook(services);
  const place = book.placeAt({ entry: recipe.entry, path: '' });
  return {
    recipe: recipe.name,
    ...(recipe.size === undefined ? {} : { size: recipe.size }),
    ...(place === undefined ? {} : { place }),
    uses: typedUses(services, placed.uri, recipe.name, material).map(({ cst, words }) => {
      const { line, character } = cst.range.start;
      const file = placed.uri.slice(placed.uri.lastIndexOf('/') + 1);
      return { words, place: { uri: placed.uri, line, character, name: `${decodeURIComponent(file)}:${line + 1}` } };
    }),
    figures: told(comparedFigures(recipe, shelf), book.style()),
  };
}

function typedUses(services: WithAnalysis, uri: string, recipe: string, material: string): TypedUse[] {
  const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
  const entry = document && entryOf(document, recipe);
  return entry === undefined ? [] : usesIn(entry, material);
}

async function compare(
  services: WithAnalysis,
  asked: CompareMaterialsParams,
  token: Token,
): Promise<CompareMaterialsResult> {
  const { analysis } = services;
  const name = await materialOf(services, asked, token);
  const shelf = analysis.shelf();
  const material = name === undefined ? undefined : shelf.material(name);
  if (material === undefined) return { recipes: [], candidates: [] };
  const style = cardBook(services).style();
  // as written: a size has the same materials
  const used = recipesWith(shelf, material.name).filter(
    ({ recipe }) => recipe.size === undefined && (asked.recipe === undefined || recipe.name === asked.recipe),
  );
  const recipes = used.map(({ recipe, placed }): ComparedRecipe => {
    const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(placed.uri));
    const open = document && services.shared.workspace.TextDocuments.get(document.uri);
    return {
      recipe: recipe.name,
      figures: told(comparedFigures(recipe, shelf), style),
      uri: placed.uri,
      ...(open === undefined ? {} : { version: open.version }),
      ranges:
        document === undefined
          ? []
          : typedUses(services, placed.uri, recipe.name, material.name).map(({ cst }) => rangeOf(document, cst)),
    };
  });
  const before = new Map<PlacedRecipe, Finding[]>();
  for (const found of used) {
    await interruptAndCheck(token);
    before.set(found, findingsOf(services, found, found.recipe));
  }
  const candidates: Candidate[] = [];
  for (const other of used.length === 0 ? [] : candidatesFor(material, shelf, analysis.stockNames('material'))) {
    const changes: Candidate['changes'][number][] = [];
    for (const found of used) {
      // each candidate is worked out in full: others get their turn in between
      await interruptAndCheck(token);
      const after = findingsOf(services, found, withMaterial(found.recipe, material.name, other.name));
      const more = newFindings(before.get(found) ?? [], after);
      changes.push(changeWith(found, material.name, other, shelf, style, more));
    }
    candidates.push({
      name: other.name,
      ...(other.title === undefined ? {} : { title: other.title }),
      stock: other.origin === 'stock',
      changes,
    });
  }
  return { material: material.name, recipes, candidates };
}

/** What the rules find in the recipe as written, with this material or that. */
function findingsOf({ analysis, shared }: WithAnalysis, { placed }: PlacedRecipe, recipe: Recipe): Finding[] {
  const source = shared.workspace.LangiumDocuments.getDocument(URI.parse(placed.uri))?.textDocument.getText() ?? '';
  return analysis.findingsIf(placed.lowered, source, [recipe]);
}
