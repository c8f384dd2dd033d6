import path from 'node:path';
import { text } from '../../calc/figure/figure.ts';
import { CannotCut, type CutOrder } from '../export/cut/cut-files.ts';
import { cutFilesOf, type RecipeCut } from '../export/cut/of-recipe.ts';
import { type Style, safe, say } from '../view/text.ts';
import { endOf, openBook } from './book.ts';
import { type ExitCode, UsageError } from './exit-codes.ts';
import { recipeNamed } from './named-recipe.ts';
import { told } from './paths.ts';
import type { Screen } from './screen.ts';
import { writeFiles } from './write-files.ts';

export interface CutOptions extends CutOrder {
  readonly out: string;
  readonly size?: string;
  readonly units: Style['units'];
  readonly force?: boolean;
  readonly book?: string;
}

/** `laybook cut`: the pieces of a recipe as files for a cutter, or as pages to lay together. */
export async function cut(
  name: string,
  paths: readonly string[],
  options: CutOptions,
  screen: Screen,
): Promise<ExitCode> {
  const book = await openBook(paths, options.book, screen);
  const recipe = recipeNamed(book, name, options.size);
  const { files, missing } = await made(() =>
    cutFilesOf(book.services.analysis.bench(recipe), options, {
      style: { units: options.units },
      tiledPdf: async (...given) => (await import('../export/pdf/index.ts')).tiledPdf(...given),
    }),
  );
  const folder = path.resolve(screen.folder, options.out);
  await writeFiles(folder, files, { from: screen.folder, ...(options.force ? { force: true } : {}) });
  const widest = Math.max(...files.map((file) => file.name.length));
  for (const file of files) {
    const notes = file.notes.map((note) => `, ${safe(note)}`).join('');
    screen.out(`${file.name.padEnd(widest)}  ${safe(file.words)}${notes}\n`);
  }
  const figures = { files: files.length, parts: options.quantity, folder: told(folder, screen.folder) };
  const one = files.length === 1;
  const sum =
    options.quantity === 1
      ? one
        ? say('1 file for one part in {folder}', figures)
        : say('{files} files for one part in {folder}', figures)
      : one
        ? say('1 file for {parts} parts in {folder}', figures)
        : say('{files} files for {parts} parts in {folder}', figures);
  screen.out(`${sum}\n`);
  for (const what of missing) screen.err(`laybook: ${say('no piece for {what}', { what })}\n`);
  return endOf(book, missing.length > 0);
}

async function made(make: () => Promise<RecipeCut>): Promise<RecipeCut> {
  try {
    return await make();
  } catch (error) {
    throw error instanceof CannotCut ? new UsageError(text('{said}', { said: error.message })) : error;
  }
}
