import { readFile, realpath, rename, stat, unlink, writeFile } from 'node:fs/promises';
import { type Text, text } from '../../calc/figure/figure.ts';
import type { LayupLexer } from '../grammar/lexer.ts';
import { longestText } from '../grammar/limits.ts';
import { tokenKinds } from '../grammar/tokens.ts';
import { formatChanges } from '../view/format/index.ts';
import { safe, say, sayText } from '../view/text.ts';
import { terminalServices } from './book.ts';
import { type ExitCode, exitCodes } from './exit-codes.ts';
import { findPaths, told, whyNotRead } from './paths.ts';
import type { Screen } from './screen.ts';
import { whyNotWritten } from './write-files.ts';

export interface FormatOptions {
  readonly check?: true;
}

/** `laybook format`: writes the files that are not in their form; with `check` only says which. */
export async function format(paths: readonly string[], options: FormatOptions, screen: Screen): Promise<ExitCode> {
  const { services, belongs } = terminalServices();
  const { files, unread } = await findPaths(paths, screen.folder, belongs);
  const lexer = services.parser.Lexer as LayupLexer;
  const kinds = tokenKinds(lexer.definition);
  const name = (file: string): string => safe(told(file, screen.folder));
  const tell = (problem: Text): void => screen.err(`laybook: ${sayText(problem)}\n`);
  for (const { path, error } of unread) tell(whyNotRead(name(path), error));
  let failed = unread.length;
  let changed = 0;
  for (const file of files) {
    const source = await sourceOf(file, name(file));
    if (typeof source !== 'string') {
      failed++;
      tell(source);
      continue;
    }
    const formatted = applied(source, formatChanges(source, lexer.plainTokens(source), kinds));
    if (formatted === source) continue;
    const refused = options.check === true ? undefined : await replaceFile(file, formatted);
    if (refused !== undefined) {
      failed++;
      tell(whyNotWritten(name(file), refused));
      continue;
    }
    changed++;
    screen.out(
      `${options.check === true ? say('not in its form: {file}', { file: name(file) }) : say('formatted: {file}', { file: name(file) })}\n`,
    );
  }
  const read = files.length - failed + unread.length;
  const rest =
    options.check !== true
      ? say('{count} changed', { count: changed })
      : changed === 1
        ? say('1 not in its form')
        : say('{count} not in their form', { count: changed });
  screen.out(
    `${read === 1 ? say('1 file read: {rest}.', { rest }) : say('{files} files read: {rest}.', { files: read, rest })}\n`,
  );
  if (failed > 0) return exitCodes.usage;
  return options.check === true && changed > 0 ? exitCodes.findings : exitCodes.clean;
}

/** The text of a file, or why it is left alone: what was not read whole and true must not be written back. */
async function sourceOf(file: string, path: string): Promise<string | Text> {
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    return whyNotRead(path, error as NodeJS.ErrnoException);
  }
  try {
    const source = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return source.length <= longestText
      ? source
      : text('{path} is longer than any recipe: it is left as it is', { path });
  } catch {
    return text('{path} is not written in UTF-8: it is left as it is', { path });
  }
}

function applied(text: string, changes: ReturnType<typeof formatChanges>): string {
  let out = '';
  let from = 0;
  for (const change of [...changes].sort((a, b) => a.start - b.start || a.end - b.end)) {
    out += text.slice(from, change.start) + change.text;
    from = change.end;
  }
  return out + text.slice(from);
}

/** All or nothing: a file that is half written would be a recipe lost. Gives back why it could not be done. */
async function replaceFile(file: string, source: string): Promise<NodeJS.ErrnoException | undefined> {
  const target = await realpath(file);
  const draft = `${target}.${process.pid}.new`;
  try {
    await writeFile(draft, source, { mode: (await stat(target)).mode, flag: 'wx' });
    await rename(draft, target);
    return undefined;
  } catch (error) {
    await unlink(draft).catch(() => undefined);
    return error as NodeJS.ErrnoException;
  }
}
