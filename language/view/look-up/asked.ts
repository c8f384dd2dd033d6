import type { LangiumDocument } from 'langium';
import { usesMaterial } from '../../../calc/compare/with-material.ts';
import type { Material, Recipe } from '../../../calc/model/index.ts';
import type { Placed, Shelf } from '../../analysis/shelf.ts';
import type { MaterialChoice } from '../../protocol/look-up.ts';
import { materialNamed } from '../hover/material.ts';
import { leafAt } from '../leaves.ts';

/** The material whose name stands at an offset. */
export function materialAt(document: LangiumDocument, offset: number): string | undefined {
  const leaf = leafAt(document, offset);
  return leaf && materialNamed(leaf, document);
}

/** A recipe with the file that it stands in. */
export interface PlacedRecipe {
  readonly recipe: Recipe;
  readonly placed: Placed;
}

/** The recipes that name a material, by their names; a recipe and its sizes apart. */
export function recipesWith(shelf: Shelf, material: string): PlacedRecipe[] {
  return allRecipes(shelf).filter(({ recipe }) => usesMaterial(recipe, material));
}

export function allRecipes(shelf: Shelf): PlacedRecipe[] {
  return [...shelf.names('recipe')].sort().flatMap((name) => {
    const placed = shelf.placed('recipe', name);
    const model = placed?.lowered.model;
    return placed === undefined || model?.kind !== 'recipe' ? [] : model.recipes.map((recipe) => ({ recipe, placed }));
  });
}

/** Materials that can be asked about: those of the workspace and those that a recipe uses; most used first. */
export function choices(shelf: Shelf, known: Iterable<string>): MaterialChoice[] {
  const recipes = allRecipes(shelf).filter(({ recipe }) => recipe.size === undefined);
  const own = new Set(shelf.names('material'));
  return [...new Set([...own, ...known])]
    .flatMap((name): MaterialChoice[] => {
      const material = shelf.material(name);
      const used = recipes.filter(({ recipe }) => usesMaterial(recipe, name)).length;
      return material === undefined || (used === 0 && !own.has(name)) ? [] : [choiceOf(material, used)];
    })
    .sort((a, b) => b.recipes - a.recipes || (a.name < b.name ? -1 : 1));
}

const choiceOf = ({ name, kind, title }: Material, recipes: number): MaterialChoice => ({
  name,
  kind,
  ...(title === undefined ? {} : { title }),
  recipes,
});
