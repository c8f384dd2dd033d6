import type { Cancellation } from 'langium';
import { benchOf } from '../../calc/figure/index.ts';
import type { BuildRecord, Recipe } from '../../calc/model/index.ts';
import type { WithAnalysis } from '../analysis/module.ts';
import { pastBook } from '../analysis/past-book.ts';
import { codeSvg } from '../export/code.ts';
import { sealedText } from '../export/made-by.ts';
import { screenSvg } from '../export/svg.ts';
import { xmlText } from '../export/xml-text.ts';
import type { NewRecordParams, NewRecordResult, PaperParams, PaperResult } from '../protocol/paper.ts';
import { cautionsOf } from '../view/cautions.ts';
import { recipeCalled } from '../view/drawing/at-cursor.ts';
import { openFindings } from '../view/open-findings.ts';
import { recordsBody, recordsHtml, recordsStyle } from '../view/records/html.ts';
import { nextNumber, questionsOf, recordFile, recordText } from '../view/records/questions.ts';
import { recordsPage } from '../view/records/sections.ts';
import { type HtmlOptions, sheetBody, sheetHtml } from '../view/sheet/html.ts';
import { sheetStyle } from '../view/sheet/html-style.ts';
import { type Sheet, sheetOf } from '../view/sheet/index.ts';
import { say } from '../view/text.ts';
import { usedLocale } from '../view/translation.ts';
import { builtDocument } from './built.ts';
import type { Machine } from './machine.ts';
import { offersOf } from './offers.ts';
import { cardBook } from './shown-book.ts';

/** Request `laybook/paper` */
export const answerPaper =
  (services: WithAnalysis, machine: Machine) =>
  async (params: PaperParams, token: Cancellation.CancellationToken): Promise<PaperResult> => {
    const document = await builtDocument(services, params.uri, token);
    const found = document && recipeCalled(document, params, cardBook(services));
    if (document === undefined || found === undefined) return { nothing: say('The recipe is no longer in this file.') };
    if (params.kind === 'records') return recordsOf(services, found.recipe, params);
    const { errors, others } = openFindings(document, found.lowered.source) ?? { errors: 0, others: 0 };
    const open = errors + others === 0 ? '' : say('Open findings in this recipe: {count}.', { count: errors + others });
    return sheetPaper(sheetNow(services, found.recipe, params, open), params, machine);
  };

/** Request `laybook/newRecord` */
export const answerNewRecord =
  (services: WithAnalysis) =>
  async (params: NewRecordParams, token: Cancellation.CancellationToken): Promise<NewRecordResult> => {
    const document = await builtDocument(services, params.uri, token);
    const found = document && recipeCalled(document, params, cardBook(services));
    if (found === undefined) return { nothing: say('The recipe is no longer in this file.') };
    const shelf = services.analysis.shelf();
    const { recipe } = found;
    const head = {
      recipe: recipe.name,
      date: params.date,
      number: nextNumber(shelf.records.ofRecipe(recipe.name)),
      ...(recipe.size === undefined ? {} : { size: recipe.size }),
      ...(recipe.revision === undefined ? {} : { revision: recipe.revision }),
    };
    const blanks = questionsOf(recipe, benchOf(recipe, shelf)).map(({ blank }) => blank);
    return { file: recordFile(head), text: recordText(head, blanks) };
  };

function sheetNow(services: WithAnalysis, recipe: Recipe, params: PaperParams, open: string): Sheet {
  const book = cardBook(services);
  const shelf = services.analysis.shelf();
  const telling = {
    style: book.style(),
    recipe: recipe.entry,
    cautions: cautionsOf(recipe, shelf),
    place: (at: Parameters<typeof book.textAt>[0]) => book.textAt(at)?.name,
  };
  const { number, date, git } = params;
  const order = {
    ...(number === undefined ? {} : { number }),
    ...(date === undefined ? {} : { date }),
    ...(git === undefined ? {} : { git }),
  };
  return sheetOf(recipe, shelf, telling, order, open);
}

async function sheetPaper(made: Sheet, params: PaperParams, { sheetPdf }: Machine): Promise<PaperResult> {
  const { paper, form, font } = params;
  const options: HtmlOptions = {
    paper,
    language: usedLocale() ?? 'en',
    code: codeSvg,
    draw: (drawing) => screenSvg(drawing),
  };
  const { title } = made;
  if (form === 'html') return { title, html: sealedText(sheetHtml(made, options)) };
  if (form === 'body') return { title, body: sheetBody(made, options), style: sheetStyle(paper) };
  if (sheetPdf === undefined)
    return { nothing: say('An editor in a browser writes no PDF: save the page, and print it from there.') };
  const pdf = await sheetPdf(made, paper, font);
  return 'badFont' in pdf
    ? { title, nothing: say('{font} is no font that can be used (.ttf, .otf).', { font: pdf.badFont }) }
    : { title, ...pdf };
}

async function recordsOf(services: WithAnalysis, recipe: Recipe, params: PaperParams): Promise<PaperResult> {
  const shelf = services.analysis.shelf();
  const records = shelf.records.ofRecipe(recipe.name);
  const title = say('Records of {recipe}', { recipe: recipe.name });
  if (records.length === 0) return { title, nothing: say('No record tells of {recipe} yet.', { recipe: recipe.name }) };
  const past = new Map<number, Awaited<ReturnType<typeof pastBook>>>();
  for (const each of params.past ?? []) past.set(each.revision, await pastBook(each.files));
  const planOf = (record: BuildRecord) => {
    const now = shelf.recipe(recipe.name, record.size);
    if (record.revision === undefined || record.revision === now?.revision)
      return now === undefined ? undefined : services.analysis.bench(now);
    const then = past.get(record.revision);
    const found = then?.recipe(recipe.name, record.size);
    return then === undefined || found?.revision !== record.revision ? undefined : benchOf(found, then);
  };
  const style = cardBook(services).style();
  const page = recordsPage(records, planOf, style);
  const wantsPast = [...new Set(records.flatMap(({ revision }) => revision ?? []))].filter(
    (revision) => revision !== recipe.revision && !past.has(revision),
  );
  return {
    title,
    offers: offersOf(services, page.calibrations, params.uri, style),
    ...(wantsPast.length === 0 ? {} : { wantsPast }),
    ...(params.form === 'html'
      ? { html: sealedText(recordsHtml(title, page, style, usedLocale() ?? 'en')) }
      : { body: `<h1>${xmlText(title)}</h1>${recordsBody(page, style)}`, style: recordsStyle }),
  };
}
