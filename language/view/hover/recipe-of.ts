import { type AstNode, AstUtils } from 'langium';
import type { Recipe } from '../../../calc/model/index.ts';
import * as ast from '../../grammar/generated/ast.ts';
import type { Lowered } from '../../lower/index.ts';
import type { HoverBook } from './book.ts';

export interface RecipeOf {
  readonly recipe: Recipe;
  readonly lowered: Lowered;
}

/** The recipe that a node stands in, as written; inside of a size, as it stands for that size. */
export function recipeAround(node: AstNode, book: HoverBook): RecipeOf | undefined {
  const entry = AstUtils.getContainerOfType(node, ast.isRecipe);
  if (entry?.$cstNode === undefined) return undefined;
  const lowered = book.analysis.entryAt(AstUtils.getDocument(entry), entry.$cstNode.offset);
  if (lowered?.model.kind !== 'recipe') return undefined;
  const size = AstUtils.getContainerOfType(node, ast.isSize)?.name;
  const { recipes } = lowered.model;
  const recipe = recipes.find((each) => each.size === size) ?? recipes[0];
  return recipe === undefined ? undefined : { recipe, lowered };
}
