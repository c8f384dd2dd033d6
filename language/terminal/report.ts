import { text } from '../../calc/figure/figure.ts';
import { reportOf } from '../../calc/report.ts';
import { cautionsOf } from '../view/cautions.ts';
import { reportMarkdown } from '../view/report/markdown.ts';
import type { Style } from '../view/text.ts';
import { endOf, openBook } from './book.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { locate, openFindings, recipeNamed, tellingOf } from './named-recipe.ts';
import { reportJson } from './report-json.ts';
import { reportText } from './report-text.ts';
import type { Screen } from './screen.ts';

export interface ReportOptions {
  readonly format: 'text' | 'json' | 'markdown' | 'html';
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
    throw new UsageError(text('--units is for what people read: figures as json are always SI'));
  const book = await openBook(paths, options.book, screen);
  const recipe = recipeNamed(book, name, options.size);
  if (options.format === 'html') {
    const { sheetPage } = await import('./sheet.ts');
    screen.out(await sheetPage(book, recipe, options.units ?? 'si'));
    return endOf(book, false);
  }
  const told = reportOf(recipe, book.services.analysis.shelf());
  if (options.format === 'json')
    screen.out(reportJson(told, cautionsOf(recipe, book.services.analysis.shelf()), (at) => locate(book, at)));
  else {
    const telling = tellingOf(book, recipe, { units: options.units ?? 'si' });
    const findings = await openFindings(book, recipe);
    screen.out(
      options.format === 'markdown'
        ? reportMarkdown(told, telling, findings)
        : reportText(told, telling, findings, screen),
    );
  }
  return endOf(book, false);
}
