import { cautionsOf, cautionWords } from '../view/cautions.ts';
import { say } from '../view/text.ts';
import { translated } from '../view/translation.ts';
import { DEFERRAL } from '../words/cautions.ts';
import { endOf, openBook } from './book.ts';
import type { ExitCode } from './exit-codes.ts';
import { recipeNamed } from './named-recipe.ts';
import { sectionsText } from './report-text.ts';
import type { Screen } from './screen.ts';

export interface CautionsOptions {
  readonly size?: string;
  readonly book?: string;
}

/** `laybook cautions`: what can hurt whoever builds this part, step by step, with the limits of the agencies. */
export async function cautions(
  name: string,
  paths: readonly string[],
  options: CautionsOptions,
  screen: Screen,
): Promise<ExitCode> {
  const book = await openBook(paths, options.book, screen);
  const recipe = recipeNamed(book, name, options.size);
  const sections = cautionsOf(recipe, book.services.analysis.shelf()).map((caution) => ({
    title: translated(caution.hazard.title),
    lead: translated(caution.hazard.brief),
    lines: cautionWords(caution),
  }));
  const foot = {
    title: say('Who has the last word'),
    lead: say(
      'Limits in the air differ from agency to agency and are revised; nothing here says that a shop complies.',
    ),
    lines: [translated(DEFERRAL)],
  };
  screen.out(sectionsText(say('Cautions for {recipe}', { recipe: recipe.name }), [...sections, foot], screen));
  return endOf(book, false);
}
