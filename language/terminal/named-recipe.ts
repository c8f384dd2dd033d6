import { text } from '../../calc/figure/figure.ts';
import type { Place, Recipe } from '../../calc/model/index.ts';
import { cautionsOf } from '../view/cautions.ts';
import type { Telling } from '../view/report/index.ts';
import { type Style, safe, say } from '../view/text.ts';
import type { OpenBook } from './book.ts';
import { findingsOf, summed } from './check.ts';
import { countsOf } from './check-text.ts';
import { UsageError } from './exit-codes.ts';
import { type Located, lineAndColumn, locatedAt } from './places.ts';
import { perhapsOf } from './wrong-calls.ts';

/** A recipe of the book in one of its sizes; says which there are where there is none. */
export function recipeNamed(book: OpenBook, name: string, size: string | undefined): Recipe {
  const shelf = book.services.analysis.shelf();
  const whole = shelf.recipe(name);
  if (whole === undefined)
    throw new UsageError(perhapsOf(text('no recipe is called {name}', { name }), name, [...shelf.names('recipe')]));
  const recipe = size === undefined ? whole : shelf.recipe(name, size);
  if (recipe === undefined)
    throw new UsageError(
      perhapsOf(text('{name} has no size {size}', { name, size: size ?? '' }), size ?? '', whole.sizes),
    );
  return recipe;
}

/** What stands open in the file of the recipe, in one sentence. */
export async function openFindings(book: OpenBook, recipe: Recipe): Promise<string> {
  const placed = book.services.analysis.shelf().placed('recipe', recipe.name);
  const document =
    placed && book.services.shared.workspace.LangiumDocuments.all.find((each) => each.uri.toString() === placed.uri);
  if (document === undefined) return '';
  const { errors, warnings, infos } = summed(await findingsOf({ ...book, documents: [document] }));
  if (errors + warnings + infos === 0) return '';
  const file = safe(book.nameOf(document.uri.toString()));
  return say('Open findings in {file}: {found} (laybook check {file}).', {
    file,
    found: countsOf({ errors, warnings, infos }),
  });
}

/** Where a place of the model stands in its file. */
export function locate(book: OpenBook, at: Place): Located | undefined {
  const found = book.services.analysis.locate(at);
  return found === undefined ? undefined : locatedAt(book, found.uri, found.span);
}

/** How a recipe is told of: units, places by file and line, cautions. */
export function tellingOf(book: OpenBook, recipe: Recipe, style: Style): Telling {
  return {
    style,
    recipe: recipe.entry,
    cautions: cautionsOf(recipe, book.services.analysis.shelf()),
    place: (at) => {
      const located = locate(book, at);
      return located === undefined ? undefined : lineAndColumn(located).replace(/:\d+$/, '');
    },
  };
}
