import type { Cancellation, LangiumDocument } from 'langium';
import type { Recipe } from '../../calc/model/index.ts';
import { reportOf } from '../../calc/report.ts';
import type { WithAnalysis } from '../analysis/module.ts';
import type { ReportParams, ReportPart, ReportResult } from '../protocol/report.ts';
import { cautionsOf } from '../view/cautions.ts';
import { openFindings } from '../view/open-findings.ts';
import { headingOf, reportMarkdown } from '../view/report/markdown.ts';
import { say } from '../view/text.ts';
import { translated } from '../view/translation.ts';
import { builtDocument } from './built.ts';
import { hoverBook } from './shown-book.ts';

/** The heading that each part of a report begins with. */
const headings: Readonly<Record<ReportPart, string>> = {
  mass: 'Layers',
  thickness: 'Layers',
  resin: 'Resin',
  cost: 'Cost of one part',
};

/** Request `laybook/report` */
export const answerReport =
  (services: WithAnalysis) =>
  async (
    { uri, recipe: name, size, part }: ReportParams,
    token: Cancellation.CancellationToken,
  ): Promise<ReportResult> => {
    const document = await builtDocument(services, uri, token);
    const found = document && recipeIn(services, document, name, size);
    if (found === undefined)
      return {
        markdown: `${noRecipe(shortName(name), size)}\n`,
        line: 0,
      };
    const { recipe, open } = found;
    const book = hoverBook(services);
    const shelf = services.analysis.shelf();
    const markdown = reportMarkdown(
      reportOf(recipe, shelf),
      {
        style: book.style(),
        recipe: recipe.entry,
        cautions: cautionsOf(recipe, shelf),
        place: (at) => book.textAt(at)?.name,
      },
      open === 0 ? '' : say('Open findings in this recipe: {count}.', { count: open }),
    );
    const line = part === undefined ? -1 : markdown.split('\n').indexOf(headingOf(translated(headings[part])));
    return { markdown, line: Math.max(0, line) };
  };

function recipeIn(
  services: WithAnalysis,
  document: LangiumDocument,
  name: string,
  size: string | undefined,
): { readonly recipe: Recipe; readonly open: number } | undefined {
  for (const { model, source } of services.analysis.entries(document)) {
    const recipe =
      model.kind === 'recipe' ? model.recipes.find((each) => each.name === name && each.size === size) : undefined;
    if (recipe === undefined) continue;
    const { errors, others } = openFindings(document, source) ?? { errors: 0, others: 0 };
    return { recipe, open: errors + others };
  }
  return undefined;
}

const noRecipe = (recipe: string, size: string | undefined): string =>
  size === undefined
    ? say('There is no recipe `{recipe}` in this file.', { recipe })
    : say('There is no recipe `{recipe}` of size `{size}` in this file.', { recipe, size: shortName(size) });

const shortName = (name: string): string => name.replace(/\W/g, '').slice(0, 80);
