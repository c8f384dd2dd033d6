import path from 'node:path';
import { URI } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import type { Recipe } from '../../calc/model/index.ts';
import { codeSvg } from '../export/code.ts';
import { sealed, sealedText } from '../export/made-by.ts';
import { screenSvg } from '../export/svg.ts';
import { sheetHtml } from '../view/sheet/html.ts';
import { type Sheet, type SheetOrder, sheetOf } from '../view/sheet/index.ts';
import { type Style, say } from '../view/text.ts';
import { usedLocale } from '../view/translation.ts';
import { endOf, type OpenBook, openBook } from './book.ts';
import { needDay } from './day.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { revisionOf } from './git.ts';
import { openFindings, recipeNamed, tellingOf } from './named-recipe.ts';
import type { Screen } from './screen.ts';
import { writeOne, wrongEnding } from './write-files.ts';

export interface SheetOptions {
  readonly out: string;
  readonly size?: string;
  readonly number?: string;
  readonly date?: string;
  readonly paper: 'a4' | 'letter';
  /** a font file (.ttf, .otf) for letters that ours lacks */
  readonly font?: string;
  readonly units: Style['units'];
  /** write over what we did not make */
  readonly force?: boolean;
  readonly book?: string;
}

/** `laybook sheet`: the build sheet of one build, as a PDF or as HTML by the ending of the file. */
export async function sheet(
  name: string,
  paths: readonly string[],
  options: SheetOptions,
  screen: Screen,
): Promise<ExitCode> {
  const ending = path.extname(options.out).toLowerCase();
  if (ending !== '.pdf' && ending !== '.html') throw wrongEnding(['.pdf', '.html'], ending);
  if (options.date !== undefined) needDay('--date', options.date);
  const book = await openBook(paths, options.book, screen);
  const recipe = recipeNamed(book, name, options.size);
  const made = await sheetFrom(book, recipe, options);
  const bytes = ending === '.html' ? sealed(htmlOf(made, options)) : await pdfOf(made, options, screen);
  await writeOne(options.out, bytes, { force: options.force === true, from: screen.folder });
  screen.out(`${options.out}\n`);
  return endOf(book, false);
}

/** The sheet as a page, for `laybook report --format html`: on A4, without number and date of a build. */
export async function sheetPage(book: OpenBook, recipe: Recipe, units: Style['units']): Promise<string> {
  const options: SheetOptions = { out: '', paper: 'a4', units };
  return sealedText(htmlOf(await sheetFrom(book, recipe, options), options));
}

async function sheetFrom(book: OpenBook, recipe: Recipe, options: SheetOptions): Promise<Sheet> {
  const shelf = book.services.analysis.shelf();
  const placed = shelf.placed('recipe', recipe.name);
  const files = placed === undefined ? [] : [URI.parse(placed.uri)].filter(({ scheme }) => scheme === 'file');
  const git = await revisionOf(files.map(({ fsPath }) => fsPath));
  const order: SheetOrder = {
    ...(options.number === undefined ? {} : { number: options.number }),
    ...(options.date === undefined ? {} : { date: options.date }),
    ...(git === undefined ? {} : { git }),
  };
  const telling = tellingOf(book, recipe, { units: options.units });
  return sheetOf(recipe, shelf, telling, order, await openFindings(book, recipe));
}

const htmlOf = (made: Sheet, { paper }: SheetOptions): string =>
  sheetHtml(made, { paper, language: usedLocale() ?? 'en', code: codeSvg, draw: (drawing) => screenSvg(drawing) });

async function pdfOf(made: Sheet, { paper, font }: SheetOptions, screen: Screen): Promise<Uint8Array> {
  const { FontError, sheetPdf } = await import('../export/pdf/index.ts');
  const fonts = font === undefined ? undefined : { regular: path.resolve(screen.folder, font) };
  const { bytes, lacking } = await sheetPdf(made, { paper, ...(fonts === undefined ? {} : { fonts }) }).catch(
    (error) => {
      throw error instanceof FontError
        ? new UsageError(text('{font} is no font that can be used (.ttf, .otf)', { font: font ?? '' }))
        : error;
    },
  );
  if (lacking.length > 0)
    screen.err(
      `laybook: ${say('the font has no letters for {letters}; --font names one that has them', { letters: lacking.join(' ') })}\n`,
    );
  return bytes;
}
