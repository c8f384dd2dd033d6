import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { type LangiumDocument, URI } from 'langium';
import { type Text, text } from '../../calc/figure/figure.ts';
import { benchOf } from '../../calc/figure/index.ts';
import {
  answeredBy,
  type BuildHead,
  nextNumber,
  type Question,
  questionsOf,
  recordFile,
  recordText,
  wrongNumbers,
} from '../view/records/questions.ts';
import { readRecord, type WrittenRecord, withLine, withoutBlanks } from '../view/records/written.ts';
import { safe, say, sayText } from '../view/text.ts';
import { endOf, type OpenBook, openBook } from './book.ts';
import { needDay } from './day.ts';
import { type ExitCode, exitCodes, UsageError } from './exit-codes.ts';
import { recipeNamed } from './named-recipe.ts';
import { benchAt } from './past-plans.ts';
import { told, whyNotRead } from './paths.ts';
import type { Screen } from './screen.ts';
import { cannot, writeWhole } from './write-files.ts';

export interface RecordOptions {
  readonly size?: string;
  readonly number?: string;
  /** day of the build, ISO 8601 */
  readonly date: string;
  readonly book?: string;
}

/**
 * `laybook record`: asks for what a build's record says, one thing after another, and writes a line after each answer:
 * whoever stops at any question has lost nothing, and goes on there when the command is called again. A record that is
 * there gets its lines and is else left as it is.
 */
export async function record(name: string, folder: string, options: RecordOptions, screen: Screen): Promise<ExitCode> {
  if (screen.ask === undefined) throw new UsageError(text('a record is asked for line by line: this needs a terminal'));
  needDay('--date', options.date);
  const book = await openBook([folder], options.book, screen);
  const shelf = book.services.analysis.shelf();
  const number = options.number ?? nextNumber(shelf.records.ofRecipe(name));
  const file = path.resolve(screen.folder, folder, recordFile({ recipe: name, date: options.date, number }));
  const shown = told(file, screen.folder);
  const there = await recordIn(file, shown);
  const size = sizeOf(there, name, options.size, shown);
  const recipe = recipeNamed(book, name, size);
  const revision = there === undefined ? recipe.revision : there.revision;
  const head: BuildHead = {
    recipe: name,
    date: options.date,
    number,
    ...(size === undefined ? {} : { size }),
    ...(revision === undefined ? {} : { revision }),
  };
  const then =
    revision === undefined || revision === recipe.revision ? undefined : await benchAt(book, name, size, revision);
  const bench = then ?? benchOf(recipe, shelf);
  const questions = questionsOf(bench.recipe, bench);
  if (revision !== undefined && bench.recipe.revision !== revision)
    screen.err(
      `${say('This record is of revision {revision}, whose text is not to be had from git: what is asked is that of the recipe as it stands.', { revision })}\n`,
    );
  screen.out(
    `${say('Record of {recipe}, number {number}. Enter alone leaves a line out; stop at any time.', { recipe: name, number: head.number })}\n`,
  );
  if (there === undefined) await written(file, recordText(head, []), shown);
  const lines = (there === undefined ? [] : withoutBlanks(there, questions).lines).map(({ text }) => text);
  const answered = answeredBy(lines, questions);
  for (const question of questions) {
    if (answered.has(question)) continue;
    const line = await asked(question, head, book, screen);
    if (line === 'stop') {
      screen.out(
        `\n${say('Kept in {file}; `{command}` goes on there.', { file: shown, command: commandFor(head) })}\n`,
      );
      return exitCodes.clean;
    }
    if (line === undefined) continue;
    // read anew: another hand may have written in it meanwhile
    const now = await recordIn(file, shown, line);
    const next =
      now === undefined ? recordText(head, [line]) : withLine(withoutBlanks(now, questions), line, questions);
    await written(file, next, shown, line);
  }
  screen.out(`${shown}\n`);
  return endOf(book, false);
}

const commandFor = ({ recipe, size, number, date }: BuildHead): string =>
  [
    'laybook record',
    recipe,
    ...(size === undefined ? [] : [`--size ${size}`]),
    `--number ${/^[\w.-]+$/.test(number) ? number : `'${number}'`} --date ${date}`,
  ].join(' ');

/** Asks until the answer can be read, or is left out. */
async function asked(
  question: Question,
  head: BuildHead,
  book: OpenBook,
  screen: Screen,
): Promise<string | undefined | 'stop'> {
  const hint = question.example === '' ? '' : ` (${question.example})`;
  for (;;) {
    const answer = await screen.ask?.(`${question.ask}${hint}: `);
    if (answer === undefined) return 'stop';
    if (answer.trim() === '') return undefined;
    const line = question.line(answer.trim());
    const odd = wrongNumbers(question, answer.trim());
    const wrong = odd === undefined ? await problemsOf(line, head, book) : [odd];
    if (wrong.length === 0) return line;
    for (const words of wrong) screen.err(`  ${safe(words)}\n`);
  }
}

/** What the checks of the notation say of one line of a record. */
async function problemsOf(line: string, head: BuildHead, { services }: OpenBook): Promise<string[]> {
  const uri = URI.parse('memory:/record-being-written.layup');
  const { LangiumDocuments, LangiumDocumentFactory, DocumentBuilder } = services.shared.workspace;
  if (LangiumDocuments.hasDocument(uri)) await DocumentBuilder.update([], [uri]);
  const document: LangiumDocument = LangiumDocumentFactory.fromString(recordText(head, [line]), uri);
  LangiumDocuments.addDocument(document);
  await DocumentBuilder.build([document], { validation: false });
  const findings = await services.analysis.findings(document);
  await DocumentBuilder.update([], [uri]);
  return findings
    .filter(({ severity, rule }) => severity === 'error' && /^(unit|line|name)\/|^record\/impossible$/.test(rule))
    .map(({ message }) => sayText(message));
}

/** The size that the record is of. Throws a UsageError where the file tells of another build than is asked for. */
function sizeOf(there: WrittenRecord | undefined, recipe: string, size: string | undefined, shown: string) {
  if (there === undefined) return size;
  if (there.recipe !== recipe)
    throw new UsageError(
      text('{file} is the record of {other}, not of {recipe}', { file: shown, other: there.recipe, recipe }),
    );
  if (size !== undefined && size !== there.size)
    throw new UsageError(
      there.size === undefined
        ? text('{file} is the record of the recipe as written, not of size {size}', { file: shown, size })
        : text('{file} is the record of size {other}, not of size {size}', { file: shown, other: there.size, size }),
    );
  return there.size;
}

/** Whoever typed a line must see that it was lost. */
const notKept =
  (line: string | undefined) =>
  (problem: Text): Text =>
    line === undefined ? problem : text('{problem}; not kept: {line}', { problem, line });

/** The record that stands in the file; another hand may have written it. Throws a UsageError for what is no record. */
async function recordIn(file: string, shown: string, line?: string): Promise<WrittenRecord | undefined> {
  const read = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return '';
    throw new UsageError(notKept(line)(whyNotRead(shown, error)));
  });
  if (read.trim() === '') return undefined;
  const record = readRecord(read);
  if (record === undefined)
    throw new UsageError(
      notKept(line)(
        text(
          '{file} does not hold one record with a line for each thing, or holds more than one record: each is a file of its own; go on with it in the editor',
          { file: shown },
        ),
      ),
    );
  return record;
}

/** The whole file or none: a machine that goes down in between leaves the old one. */
async function written(file: string, whole: string, shown: string, line?: string): Promise<void> {
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await writeWhole(file, new TextEncoder().encode(whole));
  } catch (error) {
    cannot(shown, notKept(line))(error as NodeJS.ErrnoException);
  }
}
