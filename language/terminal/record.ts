import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type LangiumDocument, URI } from 'langium';
import { benchOf } from '../../calc/figure/index.ts';
import {
  answeredBy,
  type BuildHead,
  inOrder,
  nextNumber,
  type Question,
  questionsOf,
  recordFile,
  recordText,
  wrongNumbers,
} from '../view/records/questions.ts';
import { safe, say, sayText } from '../view/text.ts';
import { endOf, type OpenBook, openBook } from './book.ts';
import { type ExitCode, exitCodes, UsageError } from './exit-codes.ts';
import { recipeNamed } from './named-recipe.ts';
import type { Screen } from './screen.ts';

export interface RecordOptions {
  readonly size?: string;
  readonly number?: string;
  /** day of the build, ISO 8601 */
  readonly date: string;
  readonly book?: string;
}

/**
 * `laybook record`: asks for what a build's record says, one thing after another, and writes the file anew after each answer:
 * whoever stops at any question has lost nothing, and goes on there when the command is called again.
 */
export async function record(name: string, folder: string, options: RecordOptions, screen: Screen): Promise<ExitCode> {
  if (screen.ask === undefined) throw new UsageError('a record is asked for line by line: this needs a terminal');
  if (!/^\d{4}-\d{2}-\d{2}$/.test(options.date)) throw new UsageError('--date is written year-month-day: 2026-05-14');
  const book = await openBook([folder], options.book, screen);
  const recipe = recipeNamed(book, name, options.size);
  const shelf = book.services.analysis.shelf();
  const head: BuildHead = {
    recipe: name,
    date: options.date,
    number: options.number ?? nextNumber(shelf.records.ofRecipe(name)),
    ...(options.size === undefined ? {} : { size: options.size }),
    ...(recipe.revision === undefined ? {} : { revision: recipe.revision }),
  };
  const file = path.resolve(screen.folder, folder, recordFile(head));
  const questions = questionsOf(recipe, benchOf(recipe, shelf));
  const lines = (await linesIn(file)).filter((line) => !questions.some(({ blank }) => blank === line));
  screen.out(
    `${say('Record of {recipe}, number {number}. Enter alone leaves a line out; stop at any time.', { recipe: name, number: head.number })}\n`,
  );
  const save = async (): Promise<void> => writeWhole(file, recordText(head, inOrder(lines, questions)));
  await save();
  const answered = answeredBy(lines, questions);
  for (const question of questions) {
    if (answered.has(question)) continue;
    const line = await asked(question, head, book, screen);
    if (line === 'stop') {
      screen.out(
        `\n${say('Kept in {file}; `{command}` goes on there.', { file: path.relative(screen.folder, file), command: commandFor(head) })}\n`,
      );
      return exitCodes.clean;
    }
    if (line === undefined) continue;
    lines.push(line);
    await save();
  }
  screen.out(`${path.relative(screen.folder, file)}\n`);
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

/** Lines that stand in the file already; another hand may have written them. */
async function linesIn(file: string): Promise<string[]> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return [];
  }
  if (text.replace(/"[^"\n]*"|\/\/.*/g, '').split('{').length > 2)
    throw new UsageError(`${path.basename(file)} holds more than one record: each is a file of its own`);
  const body = /\{([\s\S]*)\}/.exec(text)?.[1] ?? '';
  return body
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && !/^revision\b/.test(line));
}

/** The whole file or none: a machine that goes down in between leaves the old one. */
async function writeWhole(file: string, text: string): Promise<void> {
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(`${file}.part`, text);
  await rename(`${file}.part`, file);
}
