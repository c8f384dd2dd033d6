import { AstUtils, type LangiumDocument } from 'langium';
import type { Recipe } from '../../../calc/model/index.ts';
import { type LayerRow, reportOf } from '../../../calc/report.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { type Lowered, spanOf } from '../../lower/index.ts';
import type { LayerCardResult, LayerName } from '../../protocol/layer-card.ts';
import { layerLineOf } from '../hover/layer.ts';
import { leafAt } from '../leaves.ts';
import { say } from '../text.ts';
import type { CardBook } from './book.ts';
import { brokenLine } from './broken.ts';
import { layerCard } from './layer-card.ts';
import { nameOf } from './touches.ts';

/** The card of the layer on the line of an offset, or that a word there speaks of. */
export function cardAt(document: LangiumDocument, offset: number, book: CardBook): LayerCardResult {
  const lowered = book.analysis.entryAt(document, offset);
  if (lowered?.model.kind !== 'recipe') return { nothing: say('There is no recipe at the cursor.') };
  const broken = brokenLine(document, lowered);
  const recipe = sizeAt(document, offset, lowered.model.recipes);
  if (recipe === undefined) return { nothing: say('There is no recipe at the cursor.') };
  const rows = reportOf(recipe, book.analysis.shelf()).layers;
  const row = rowSpokenOf(document, offset, rows, lowered) ?? rowOnLine(document, offset, rows, lowered);
  const first = rows[0] && nameOf(recipe, rows[0].laid);
  const card = row && layerCard(document.uri.toString(), recipe, row.laid.key, book);
  return {
    ...(card === undefined ? { nothing: nothingWords(recipe, rows) } : { card }),
    ...(first === undefined ? {} : { first }),
    ...(broken === undefined ? {} : { broken }),
  };
}

/** The card of a layer by its name. */
export function cardOf(
  document: LangiumDocument,
  { recipe: name, size, key }: LayerName,
  book: CardBook,
): LayerCardResult {
  const lowered = book.analysis.entries(document).find((entry) => entry.name === name && entry.model.kind === 'recipe');
  const recipe =
    lowered?.model.kind === 'recipe' ? lowered.model.recipes.find((each) => each.size === size) : undefined;
  if (lowered === undefined || recipe === undefined)
    return { nothing: say('The recipe {name} is no longer in this file.', { name }) };
  const broken = brokenLine(document, lowered);
  const card = layerCard(document.uri.toString(), recipe, key, book);
  return {
    ...(card === undefined
      ? { nothing: say('The stack of {name} has no layer {key} any more.', { name, key }) }
      : { card }),
    ...(broken === undefined ? {} : { broken }),
  };
}

function nothingWords(recipe: Recipe, rows: readonly LayerRow[]): string {
  if (rows.length === 0) return say('The stack of {recipe} has no layers yet.', { recipe: recipe.name });
  return say('Put the cursor on a layer of the stack, and the layer is told of here.');
}

/** Inside of a size, the recipe as it stands for that size. */
export function sizeAt(document: LangiumDocument, offset: number, recipes: readonly Recipe[]): Recipe | undefined {
  const node = leafAt(document, offset)?.astNode;
  const size = node && AstUtils.getContainerOfType(node, ast.isSize)?.name;
  return recipes.find((recipe) => recipe.size === size) ?? recipes[0];
}

function rowSpokenOf(
  document: LangiumDocument,
  offset: number,
  rows: readonly LayerRow[],
  { places }: Lowered,
): LayerRow | undefined {
  const leaf = leafAt(document, offset);
  const at = leaf && layerLineOf(leaf)?.$cstNode?.offset;
  return at === undefined ? undefined : rows.find(({ laid }) => places.get(laid.path)?.offset === at);
}

/** Anywhere on the lines that a layer is typed on. */
function rowOnLine(
  document: LangiumDocument,
  offset: number,
  rows: readonly LayerRow[],
  { places }: Lowered,
): LayerRow | undefined {
  const { textDocument } = document;
  const { line } = textDocument.positionAt(offset);
  const lineOf = (at: number): number => textDocument.positionAt(at).line;
  return rows.find(({ laid }) => {
    const span = spanOf(places, laid.path);
    return span !== undefined && lineOf(span.offset) <= line && line <= lineOf(span.end);
  });
}
