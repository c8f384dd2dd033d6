/** The language reaches the reader: by the editor's protocol, and at a terminal. What machines read stays as it is. */
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { words } from '../../extension/new/words.ts';
import { languageOfSystem } from '../../language/terminal/speak.ts';
import { useTranslation } from '../../language/view/translation.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import { folderOf, laybook } from '../harness/terminal.ts';
import { locales, readTable } from './tables.ts';

afterEach(() => useTranslation(undefined));

describe('an editor that speaks German', () => {
  let server: MemoryServer | undefined;
  afterAll(() => server?.stop());

  it('shows findings, hovers and numbers in German', async () => {
    const german = await startMemoryServer(sampleFiles, {
      initializationOptions: { locale: 'de', translation: readTable('language/l10n/de.json') },
    });
    server = german;
    await german.open('first_try.layup', sampleFiles['first_try.layup'] ?? '');
    await german.settled();
    const told = german.diagnostics.get('first_try.layup') ?? [];
    const short = told.find(({ code }) => code === 'wrap/short');
    expect(short?.message).toBe(
      'outer reicht 30 mm über den Umriss; 20 mm Kante umschlagen und 25 mm auf body auflegen braucht 38,4 mm; es fehlen 8,42 mm',
    );
    const hover = await german.client.sendRequest<{ contents: { value: string } }>('textDocument/hover', {
      textDocument: { uri: german.uriOf('first_try.layup') },
      position: { line: 28, character: 5 },
    });
    expect(hover.contents.value).toContain('Ein Stück Gewebe über das ganze Teil');
  }, 60_000);

  it.each(['nothing', { 'ends there too': 3 }, ['a'], 7, null])(
    'is not upset by %j for a translation',
    async (translation) => {
      const upset = await startMemoryServer({}, { initializationOptions: { locale: 'de', translation } });
      await upset.settled();
      expect(upset.log).toEqual([]);
      upset.stop();
    },
  );
});

describe('a terminal', () => {
  const { folder, dispose } = folderOf(sampleFiles);
  afterAll(dispose);

  it('speaks the language that is asked for', async () => {
    const { out, code } = await laybook(folder, 'check', 'first_try.layup', '--lang', 'de');
    expect(code).toBe(1);
    expect(out).toContain('Warnung: kein Lecktest: ein Leck zeigt sich erst, wenn das Harz drin ist');
    expect(out).toMatch(/1 Datei geprüft: \d+ Fehler, \d+ Warnungen, \d+ Hinweise\./);
    const report = await laybook(folder, 'report', 'sled_deck', '--lang', 'de');
    expect(report.out).toMatch(/Masse +2,\d+ kg +Summe aller Lagen/);
  }, 60_000);

  it('speaks English where a language is not translated, or none is said', async () => {
    const plain = await laybook(folder, 'check', 'first_try.layup');
    expect(plain.out).toContain('no leak test');
    expect((await laybook(folder, 'check', 'first_try.layup', '--lang', 'tlh')).out).toBe(plain.out);
  }, 60_000);

  it.each(['json', 'sarif', 'github'])(
    'writes %s in English, whatever is spoken',
    async (format) => {
      const plain = await laybook(folder, 'check', 'first_try.layup', '--format', format);
      const german = await laybook(folder, 'check', 'first_try.layup', '--format', format, '--lang', 'de');
      expect(german.out).toBe(plain.out);
    },
    60_000,
  );

  it('asks the system in the order that POSIX gives', () => {
    expect(languageOfSystem({ LC_ALL: '', LC_MESSAGES: 'de_DE.UTF-8', LANG: 'en_GB.UTF-8' })).toBe('de_DE.UTF-8');
    expect(languageOfSystem({ LANG: 'C.UTF-8' })).toBe('C.UTF-8');
    expect(languageOfSystem({})).toBeUndefined();
  });
});

it('words that new files are written with end no text and no line', () => {
  for (const locale of locales()) {
    const table = readTable(`extension/l10n/bundle.l10n.${locale}.json`);
    const wrong = Object.values(words).filter((each) => /["\\\n]/.test(table[each] ?? ''));
    expect(wrong).toEqual([]);
  }
});

it('a translation names only what is shown as it is: no unit and no word of the notation is changed', () => {
  // Backticks hold notation and names of settings.
  const code = (text: string): string =>
    [...text.matchAll(/`[^`]*`/g)]
      .map(([found]) => found)
      .sort()
      .join();
  const wrong = locales().flatMap((locale) =>
    Object.entries(readTable(`language/l10n/${locale}.json`)).filter(
      ([key, words]) => words !== '' && code(key) !== code(words),
    ),
  );
  expect(wrong).toEqual([]);
});
