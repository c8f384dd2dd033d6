import { readFileSync } from 'node:fs';
import path from 'node:path';
import { readTranslation, useTranslation } from '../view/translation.ts';

/** Formats that programs read: their texts are English, wherever they are made. */
const forMachines: ReadonlySet<unknown> = new Set(['json', 'sarif', 'github']);

/** Where the tables lie, from the bundle in dist/ and from this file. */
const folders = ['../language/l10n', '../l10n'];

/** Everything from here on is said in a language, where it is translated; else in English. */
export function speak(language: string | undefined, format: unknown): void {
  const code = /^[a-z]{2,3}/i.exec(language ?? '')?.[0].toLowerCase();
  const translation = code === undefined || forMachines.has(format) ? undefined : tableOf(code);
  useTranslation(translation, translation === undefined ? undefined : code);
}

/** The language that a call asks for, read before all else of it: `--lang de`, `--lang=de`; what follows `--` are names. */
export function languageAsked(args: readonly string[]): string | undefined {
  const end = args.indexOf('--');
  const options = end < 0 ? args : args.slice(0, end);
  const at = options.findLastIndex((arg) => arg === '--lang' || arg.startsWith('--lang='));
  const asked = options[at];
  return asked === '--lang' ? options[at + 1] : asked?.slice('--lang='.length);
}

/** The language that a system says it speaks: `de_DE.UTF-8`; POSIX.1-2017, 8.2, in the order in which they count. */
export function languageOfSystem(environment: Readonly<Record<string, string | undefined>>): string | undefined {
  return [environment.LC_ALL, environment.LC_MESSAGES, environment.LANG].find((value) => (value ?? '') !== '');
}

function tableOf(code: string) {
  for (const folder of folders) {
    try {
      return readTranslation(JSON.parse(readFileSync(path.join(import.meta.dirname, folder, `${code}.json`), 'utf8')));
    } catch {
      // not there: English
    }
  }
  return undefined;
}
