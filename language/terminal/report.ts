import type { Place, Recipe } from '../../calc/model/index.ts';
import { reportOf } from '../../calc/report.ts';
import { cautionsOf } from '../view/cautions.ts';
import type { Telling } from '../view/report/index.ts';
import { reportMarkdown } from '../view/report/markdown.ts';
import { type Style, safe } from '../view/text.ts';
import { nearestWords } from '../words/nearest.ts';
import { endOf, type OpenBook, openBook } from './book.ts';
import { findingsOf, summed } from './check.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { type Located, lineAndColumn, locatedAt } from './places.ts';
import { reportJson } from './report-json.ts';
import { reportText } from './report-text.ts';
import type { Screen } from './screen.ts';

export interface ReportOptions {
  readonly format: 'text' | 'json' | 'markdown';
  readonly size?: string;
  /** SI where nothing is said; figures for machines are always SI */
  readonly units?: Style['units'];
  readonly book?: string;
}

/** `laybook report`: what a recipe comes to in one size. */
export async function report(
  name: string,
  paths: readonly string[],
  options: ReportOptions,
  screen: Screen,
): Promise<ExitCode> {
  if (options.format === 'json' && options.units !== undefined)
    throw new UsageError('--units is for text and markdown: figures as json are always SI');
  const book = await openBook(paths, options.book, screen);
  const recipe = recipeOf(book, name, options.size);
  const told = reportOf(recipe, book.services.analysis.shelf());
  const locate = (at: Place): Located | undefined => {
    const found = book.services.analysis.locate(at);
    return found === undefined ? undefined : locatedAt(book, found.uri, found.span);
  };
  if (options.format === 'json') screen.out(reportJson(told, locate));
  else {
    const telling: Telling = {
      style: { units: options.units ?? 'si' },
      recipe: recipe.entry,
      cautions: cautionsOf(recipe, book.services.analysis.shelf()),
      place: (at) => {
        const located = locate(at);
        return located === undefined ? undefined : lineAndColumn(located).replace(/:\d+$/, '');
      },
    };
    const findings = await openFindings(book, recipe);
    screen.out(
      options.format === 'markdown'
        ? reportMarkdown(told, telling, findings)
        : reportText(told, telling, findings, screen),
    );
  }
  return endOf(book, false);
}

function recipeOf(book: OpenBook, name: string, size: string | undefined): Recipe {
  const shelf = book.services.analysis.shelf();
  const whole = shelf.recipe(name);
  if (whole === undefined) {
    throw new UsageError(
      `no recipe is called ${name}${perhaps(nearestWords(name, shelf.names('recipe'), 3), [...shelf.names('recipe')])}`,
    );
  }
  const recipe = size === undefined ? whole : shelf.recipe(name, size);
  if (recipe === undefined)
    throw new UsageError(
      `${name} has no size ${size}${perhaps(nearestWords(size ?? '', whole.sizes, 3), whole.sizes)}`,
    );
  return recipe;
}

const mostListed = 10;

function perhaps(alike: readonly string[], all: readonly string[]): string {
  if (alike.length > 0) return `; perhaps ${alike.join(' or ')}`;
  if (all.length === 0) return ': there is none';
  const listed = [...all].sort().slice(0, mostListed).join(', ');
  return all.length > mostListed
    ? `; there are ${listed} and others`
    : `; there ${all.length === 1 ? 'is' : 'are'} ${listed}`;
}

/** What stands open in the file of the recipe, in one sentence. */
async function openFindings(book: OpenBook, recipe: Recipe): Promise<string> {
  const placed = book.services.analysis.shelf().placed('recipe', recipe.name);
  const document =
    placed && book.services.shared.workspace.LangiumDocuments.all.find((each) => each.uri.toString() === placed.uri);
  if (document === undefined) return '';
  const { errors, warnings, infos } = summed(await findingsOf({ ...book, documents: [document] }));
  if (errors + warnings + infos === 0) return '';
  const file = safe(book.nameOf(document.uri.toString()));
  return `Open findings in ${file}: ${errors} errors, ${warnings} warnings, ${infos} notes (laybook check ${file}).`;
}
