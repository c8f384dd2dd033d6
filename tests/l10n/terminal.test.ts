/**
 * A terminal that speaks a made-up language, in which every letter of ours is another one: every wrong call, the help and what is
 * said by every command. Whatever stands there in our letters, but for names and what was typed, is a text that nothing translates.
 */
import { chmodSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { languageAsked } from '../../language/terminal/speak.ts';
import { useTranslation } from '../../language/view/translation.ts';
import { sampleFiles } from '../harness/sample.ts';
import { files, text } from '../harness/sources.ts';
import { answering, folderOf, laybook, type Ran } from '../harness/terminal.ts';
import { serverTexts } from '../setup/catalogue.mjs';
import { pseudoTable } from './pseudo.ts';
import { english, vocabularyOf } from './vocabulary.ts';

/** The made-up language is read as a table of translations is: from its file, which is in no folder. */
const table = vi.hoisted(() => ({ json: '' }));
vi.mock('node:fs', async (load) => {
  const real = await load<typeof import('node:fs')>();
  const read = (file: unknown, ...rest: unknown[]): unknown =>
    String(file).endsWith(`${path.sep}qps.json`)
      ? table.json
      : (real.readFileSync as (...given: unknown[]) => unknown)(file, ...rest);
  return { ...real, default: real, readFileSync: read };
});
table.json = JSON.stringify(pseudoTable(serverTexts().texts.keys()));

const recordOf = (name: string): string => `notation 1\n\nrecord ${name} {\n  mass 2.3 kg\n}\n`;

const strange: Readonly<Record<string, string | Uint8Array>> = {
  'records/sled_deck/2026-05-14-1.layup': recordOf('sled_deck 2026-05-14 "1"'),
  'records/sled_deck/2026-05-14-2.layup': recordOf('first_try 2026-05-14 "2"'),
  'records/sled_deck/2026-05-14-3.layup': recordOf('sled_deck 2026-05-14 "3"').repeat(2),
  'records/sled_deck/2026-05-14-5.layup': recordOf('sled_deck short 2026-05-14 "5"'),
  'hidden.txt': 'no recipe',
  'broken/latin.layup': new Uint8Array([0x66, 0xe4, 0x0a]),
  'mine.svg': '<svg/>',
  'mine.pdf': 'mine',
  'empty_recipe/empty.layup': 'notation 1\n\nrecipe bare {\n}\n',
};
const { folder, dispose } = folderOf({ ...sampleFiles, ...strange });
mkdirSync(path.join(folder, 'empty'));

afterAll(dispose);
afterEach(() => useTranslation(undefined));

const vocabulary = vocabularyOf({
  ...sampleFiles,
  ...Object.fromEntries(Object.entries(strange).map(([name, said]) => [name, typeof said === 'string' ? said : ''])),
});

/** Names of commands, options, their values and files, what is typed as it stands in every language, and a sentence of the sample that a table breaks. */
const typed = new Set(
  'laybook check report cut draw sheet cautions record records lots format explain text json sarif github markdown html svg dxf pdf piece material layer si us both letter error warning info plan section layup version lang help book size units out quantity by paper force layers number date font lot part within today fail on node_modules dist outline cloth core process dimension mark latin bridging nowhere ttf otf de PDF UTF SVG DXF ENOENT'.split(
    ' ',
  ),
);

/** Our words in what a call said; `given` is what was typed. */
function leaks({ out, err }: Ran, given: readonly string[]): string[] {
  const own = new Set(given.flatMap((each) => each.match(/[A-Za-z]\w*/g) ?? []));
  // lines are broken for the terminal, inside of titles of works too
  return english(`${out}\n${err}`.replace(/\s+/g, ' '), vocabulary).filter(
    (word) => !typed.has(word) && !own.has(word),
  );
}

const said = (call: string): string[] => call.split(' ').filter((each) => each !== '');

/** Every wrong call, and what is not there; `answers` are given to questions. */
const wrong: readonly { readonly call: string; readonly answers?: readonly string[] }[] = [
  // what is refused before any command is read
  { call: 'chek' },
  { call: 'zzzzzz' },
  { call: 'check --formt text' },
  { call: 'check --zzzzzz' },
  { call: 'check --format yaml' },
  { call: 'check --book' },
  { call: 'check --fail-on nothing' },
  { call: 'report' },
  { call: 'format' },
  { call: 'cut sled_deck' },
  { call: 'draw sled_deck pan --out x.svg' },
  { call: 'explain one two three' },
  { call: 'record one two three' },
  { call: 'cut sled_deck --out x --quantity many' },
  { call: 'lots --within soon' },
  // paths
  { call: 'check nowhere' },
  { call: 'check hidden.txt' },
  { call: 'check hidden.txt/below' },
  { call: 'check empty' },
  { call: 'check --book nowhere' },
  { call: 'format broken' },
  // names
  { call: 'report sled_dek' },
  { call: 'report zzzzzz' },
  { call: 'report zzzzzz empty_recipe/empty.layup --book empty_recipe' },
  { call: 'report sled_deck --size shrt' },
  { call: 'report sled_deck --size zzzzzz' },
  { call: 'report bare empty_recipe --size zzzzzz' },
  { call: 'report sled_deck --format json --units us' },
  { call: 'explain zzzzzz' },
  { call: 'explain perforat' },
  { call: 'explain wrap/shrt' },
  { call: 'explain zzzzzz/zzzzzz' },
  // files to write
  { call: 'draw sled_deck plan --out x.png' },
  { call: 'draw sled_deck plan --out x' },
  { call: 'draw sled_deck plan --out mine.svg' },
  { call: 'draw sled_deck plan --out hidden.txt/x.svg' },
  { call: 'draw sled_deck plan --out x.svg --layers clot' },
  { call: 'draw sled_deck plan --out x.svg --layers zzzzzz' },
  { call: 'draw bare plan empty_recipe --out x.svg' },
  { call: 'cut bare empty_recipe --out x' },
  { call: 'cut sled_deck --out x --quantity 0' },
  { call: 'cut sled_deck --out x --quantity 99999 --by material' },
  { call: 'cut sled_deck --out mine.svg' },
  { call: 'sheet sled_deck --out x.txt' },
  { call: 'sheet sled_deck --out x' },
  { call: 'sheet sled_deck --out mine.pdf' },
  { call: 'sheet sled_deck --out x.pdf --font hidden.txt' },
  { call: 'sheet sled_deck --out x.pdf --date 2026-02-30' },
  { call: 'sheet sled_deck --out x.pdf --date yesterday' },
  // records
  { call: 'records sled_deck --out x.txt' },
  { call: 'records zzzzzz' },
  { call: 'lots --number 3' },
  { call: 'lots --part zzzzzz' },
  { call: 'lots --part zzzzzz --number 7' },
  { call: 'lots --lot zzzzzz' },
  { call: 'lots --today yesterday' },
  { call: 'record sled_deck' },
  { call: 'record sled_deck --number 2 --date 2026-05-14', answers: [''] },
  { call: 'record sled_deck --number 3 --date 2026-05-14', answers: [''] },
  { call: 'record sled_deck --number 1 --date 2026-05-14 --size short', answers: [''] },
  { call: 'record sled_deck --number 5 --date 2026-05-14 --size long', answers: [''] },
];

const called = (call: string, answers?: readonly string[], language: readonly string[] = ['--lang', 'qps']) =>
  answers === undefined
    ? laybook(folder, ...said(call), ...language)
    : answering(folder, answers, ...said(call), ...language);

describe('in a made-up language a terminal says nothing in ours', () => {
  it.each(wrong)(
    'of a wrong call: $call',
    async ({ call, answers }) => {
      const told = await called(call, answers);
      expect(told.code).toBe(2);
      expect(told.err).toContain('⟦');
      expect(leaks(told, said(call))).toEqual([]);
    },
    60_000,
  );

  it('without a command, nor where an option has nothing behind it', async () => {
    for (const args of [['--lang', 'qps'], ['--lang=qps'], ['--lang', 'qps', 'check', '--book']]) {
      const told = await laybook(folder, ...args);
      expect(told.code).toBe(2);
      expect(told.err).toContain('⟦');
      expect(leaks(told, [])).toEqual([]);
    }
  });

  it.each(['', ...'check report cut draw sheet cautions record records lots format explain'.split(' ')])(
    'in the help of `laybook %s`',
    async (command) => {
      const told = await called(`${command} --help`);
      expect(told.code).toBe(0);
      expect(told.out).toContain('⟦');
      expect(leaks(told, [])).toEqual([]);
    },
  );

  it.each([
    'check',
    'check first_try.layup',
    'report sled_deck',
    'report sled_deck --units us --format markdown',
    'cut sled_deck --out cut',
    'cut sled_deck --out cut --quantity 2 --format dxf --by material',
    'draw sled_deck plan --out plan.svg',
    'sheet sled_deck --out sheet.html',
    'cautions sled_deck',
    'records sled_deck',
    'lots',
    'lots --lot A1',
    'format --check .',
    'explain perforate',
    'explain',
  ])(
    'by `laybook %s`',
    async (call) => {
      const told = await called(call);
      expect(told.code).toBeLessThan(3);
      expect(leaks(told, said(call))).toEqual([]);
    },
    120_000,
  );

  it('by the questions of a record', async () => {
    const answers = ['nonsense', '22', '', '', 'nonsense'];
    const told = await answering(folder, answers, 'record', 'sled_deck', '--number', '9', '--lang', 'qps');
    expect(leaks({ ...told, out: `${told.out}\n${told.asked.join('\n')}` }, ['nonsense'])).toEqual([]);
  }, 60_000);

  it.skipIf(process.platform === 'win32' || process.getuid?.() === 0)('of a file that may not be read', async () => {
    const { folder: shut, dispose: open } = folderOf({ 'shut.layup': recordOf('sled_deck 2026-05-14 "1"') });
    chmodSync(path.join(shut, 'shut.layup'), 0);
    const told = await laybook(shut, 'check', '--lang', 'qps');
    expect(leaks(told, ['shut'])).toEqual([]);
    open();
  });
});

describe('a wrong call', () => {
  it('is told in the language of the system where none is asked for, and in the one that is asked for wherever it stands', async () => {
    const german = await laybook(folder, 'chek', '--lang=de');
    expect(german.err).toMatch(/^laybook: es gibt keinen Befehl chek; vielleicht check\n/);
    expect((await laybook(folder, '--lang', 'de', 'chek')).err).toBe(german.err);
  });

  it('is told in it too where the output is for a machine, which stays English', async () => {
    const call = ['report', 'sled_dek', '--format', 'json', '--lang', 'de'];
    expect(await laybook(folder, ...call)).toEqual({
      code: 2,
      out: '',
      err: 'laybook: kein Rezept heißt sled_dek; vielleicht sled_deck\n',
    });
  }, 60_000);

  it('reads the language before all else', () => {
    expect(languageAsked(['chek', '--lang', 'de'])).toBe('de');
    expect(languageAsked(['--lang=de', 'check'])).toBe('de');
    expect(languageAsked(['--lang=de', 'check', '--lang', 'fr'])).toBe('fr');
    expect(languageAsked(['check', '--', '--lang', 'de'])).toBeUndefined();
    expect(languageAsked(['check', '--lang'])).toBeUndefined();
    expect(languageAsked([])).toBeUndefined();
  });
});

it('every refusal of the sources is called above', async () => {
  const thrown = files
    .filter((file) => file.startsWith('language/terminal/'))
    .flatMap((file) => [...text(file).matchAll(/new UsageError\(\s*(?:perhaps(?:Of)?\(\s*)?text\(\s*'([^']+)'/g)]);
  const told = [...text('language/terminal/wrong-calls.ts').matchAll(/\btext\('([^']+)'/g)];
  const templates = [...thrown, ...told].map(([, template = '']) => template).filter((each) => each !== '{said}');
  expect(templates.length).toBeGreaterThan(25);
  const heard: string[] = [];
  for (const { call, answers } of wrong) heard.push((await called(call, answers, [])).err);
  const pattern = (template: string): RegExp =>
    new RegExp(template.replace(/[.*+?^$()|[\]\\]/g, '\\$&').replace(/\{\w+\}/g, '.+'));
  expect(templates.filter((template) => !heard.some((err) => pattern(template).test(err)))).toEqual([]);
}, 300_000);
