/**
 * Everything that is shown can be translated, and is translated whole. `UPDATE=1` writes what is missing into the tables, with
 * nothing behind it, and takes out what nothing says any more.
 */
import { describe, expect, it } from 'vitest';
import { manifestTexts } from '../harness/manifest.ts';
import { files, text } from '../harness/sources.ts';
import { editorTexts, serverTexts } from '../setup/catalogue.mjs';
import { type Snippet, textsOfSnippet } from '../setup/snippets.mjs';
import { links, locales, placeholders, readTable, type Table, writeTable } from './tables.ts';

const server = serverTexts();
const editor = editorTexts();
const english = manifestTexts('en');
const snippets = Object.entries(JSON.parse(text('extension/snippets.json')) as Record<string, Snippet>);

const kinds: readonly { name: string; file: (locale: string) => string; wanted: Table }[] = [
  {
    name: 'texts of the server',
    file: (locale) => `language/l10n/${locale}.json`,
    wanted: Object.fromEntries([...server.texts.keys()].map((key) => [key, key])),
  },
  {
    name: 'texts of the extension',
    file: (locale) => `extension/l10n/bundle.l10n.${locale}.json`,
    wanted: Object.fromEntries([...editor.texts.keys()].map((key) => [key, key])),
  },
  {
    name: 'texts of the snippets',
    file: (locale) => `extension/l10n/snippets.${locale}.json`,
    wanted: Object.fromEntries(snippets.flatMap(([name, each]) => textsOfSnippet(name, each)).map((key) => [key, key])),
  },
  { name: 'texts of the manifest', file: (locale) => `extension/l10n/package.nls.${locale}.json`, wanted: english },
];

it('no text is put together: it could not be translated', () => {
  expect([...server.faults, ...editor.faults]).toEqual([]);
});

it('there are texts, and a translation of them', () => {
  expect(server.texts.size).toBeGreaterThan(2000);
  expect(editor.texts.size).toBeGreaterThan(100);
  expect(locales()).toContain('de');
});

describe.each(locales())('%s', (locale) => {
  describe.each(kinds)('$name', ({ file, wanted }) => {
    if (process.env.UPDATE !== undefined) {
      const before = readTable(file(locale));
      writeTable(file(locale), Object.fromEntries(Object.keys(wanted).map((key) => [key, before[key] ?? ''])));
    }
    const table = readTable(file(locale));

    it('lacks none', () => {
      expect(Object.keys(wanted).filter((key) => (table[key] ?? '') === '')).toEqual([]);
    });

    it('has none that nothing says', () => {
      expect(Object.keys(table).filter((key) => !Object.hasOwn(wanted, key))).toEqual([]);
    });

    it('is sorted', () => {
      const keys = Object.keys(table);
      expect(keys).toEqual([...keys].sort());
    });

    it('keeps figures and links', () => {
      const wrong = Object.entries(table).filter(([key, words]) => {
        const from = wanted[key] ?? '';
        if (words === '') return false;
        // a figure may stand twice, or in another place, but none may be lost or come from nowhere
        const names = (of: string): string => [...new Set(placeholders(of))].join();
        return names(words) !== names(from) || links(words).join() !== links(from).join();
      });
      expect(wrong).toEqual([]);
    });
  });
});

describe('the manifest', () => {
  const manifest = text('package.json');

  it('uses every text that there is, and no other', () => {
    const used = new Set([...manifest.matchAll(/"%([\w.-]+)%"/g)].map(([, key]) => key));
    expect([...used].sort()).toEqual(Object.keys(english).sort());
  });

  it('says nothing in one language', () => {
    const shown =
      /"(title|shortTitle|description|markdownDescription|altText|contents|displayName|label)": "(?!%)([^"]*)"/g;
    const bare = [...manifest.matchAll(shown)].map(([found]) => found);
    // the name of the extension is a name
    expect(bare.filter((found) => !found.endsWith('": "Laybook"'))).toEqual([]);
    const lists = [...manifest.matchAll(/"(?:markdown)?[eE]numDescriptions": \[([^\]]*)\]/g)].map(
      ([, list = '']) => list,
    );
    expect(lists.length).toBeGreaterThan(0);
    const told: readonly string[] = lists.flatMap((list) => JSON.parse(`[${list}]`));
    expect(told.filter((each) => !/^%[\w.-]+%$/.test(each))).toEqual([]);
  });
});

it('the extension shows nothing that is not looked up', () => {
  const sources = files.filter((file) => /^extension\/.*\.ts$/.test(file) && !file.endsWith('/words.ts'));
  const call = /\.(showInformationMessage|showWarningMessage|showErrorMessage|setStatusBarMessage)\(\s*(['"`])/g;
  const property =
    /\b(title|placeHolder|prompt|openLabel|saveLabel|detail|description|tooltip|ariaLabel|statusBarItem\.text): ?(['"`])(?!['"`]|\$\{)([^'"`]*)/g;
  const bare = sources.flatMap((file) => {
    const code = text(file).replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '');
    return [...code.matchAll(call), ...code.matchAll(property)].map(([found]) => `${file}: ${found}`);
  });
  // an example of a rule's name, in a box that asks for one
  expect(bare).toEqual(["extension/commands/explain-rule.ts: placeHolder: 'wrap/short"]);
});
