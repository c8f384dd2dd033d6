import path from 'node:path';
import { text } from '../../calc/figure/figure.ts';
import { sealed } from '../export/made-by.ts';
import { recordsHtml } from '../view/records/html.ts';
import { partName } from '../view/records/lots.ts';
import { type RecordsPage, recordsPage } from '../view/records/sections.ts';
import { type Style, say, sayText } from '../view/text.ts';
import { usedLocale } from '../view/translation.ts';
import { endOf, openBook } from './book.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { pastPlans } from './past-plans.ts';
import { sectionsText } from './report-text.ts';
import type { Screen } from './screen.ts';
import { writeOne } from './write-files.ts';

export interface RecordsOptions {
  readonly format: 'text' | 'json';
  /** a page with charts */
  readonly out?: string;
  readonly units: Style['units'];
  /** write over what we did not make */
  readonly force?: boolean;
  readonly book?: string;
}

/** `laybook records`: what was built by a recipe, against the plan of each build's revision, and what drifts. */
export async function records(
  name: string,
  paths: readonly string[],
  options: RecordsOptions,
  screen: Screen,
): Promise<ExitCode> {
  if (options.out !== undefined && path.extname(options.out).toLowerCase() !== '.html')
    throw new UsageError(text('--out ends with .html'));
  const book = await openBook(paths, options.book, screen);
  const found = book.services.analysis.shelf().records.ofRecipe(name);
  if (found.length === 0) throw new UsageError(text('no record tells of {recipe}', { recipe: name }));
  const style: Style = { units: options.units };
  const { planOf, why } = await pastPlans(book, found);
  const page = recordsPage(found, planOf, style, why);
  const title = say('Records of {recipe}', { recipe: name });
  if (options.out !== undefined) {
    const bytes = sealed(recordsHtml(title, page, style, usedLocale() ?? 'en'));
    await writeOne(options.out, bytes, { force: options.force === true, from: screen.folder });
    screen.out(`${options.out}\n`);
  } else if (options.format === 'json') screen.out(recordsJson(name, page));
  else screen.out(sectionsText(title, page.sections, screen));
  return endOf(book, false);
}

function recordsJson(recipe: string, { sizes, calibrations, withoutPlan }: RecordsPage): string {
  const told = sizes.map(({ size, builds, series }) => ({
    size: size ?? null,
    builds,
    quantities: series.map(({ kind, points, limits, drift }) => ({
      quantity: kind.name,
      ...(limits === undefined ? {} : { mean: limits.mean, low: limits.low, high: limits.high }),
      ...(drift === undefined ? {} : { drift }),
      points: points.map(({ record, value, plan }) => ({
        build: partName(record),
        value,
        ...(plan === undefined ? {} : { plan }),
      })),
    })),
  }));
  const values = calibrations.map(({ entry, line, builds, says }) => ({
    entry: entry.kind === 'shop' ? 'shop' : entry.name,
    line,
    builds,
    says: sayText(says),
  }));
  return `${JSON.stringify({ schema: 'laybook/records@1', recipe, sizes: told, calibrations: values, withoutPlan }, undefined, 2)}\n`;
}
