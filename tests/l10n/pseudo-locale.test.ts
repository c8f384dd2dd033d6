/**
 * The server speaks a made-up language in which every letter of ours is another one. Whatever it then shows in our letters, but for
 * names, units, the words of the notation and what people wrote themselves, is a text that no translation reaches.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { useTranslation } from '../../language/view/translation.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import { serverTexts } from '../setup/catalogue.mjs';
import { pseudoTable } from './pseudo.ts';
import { english, vocabularyOf } from './vocabulary.ts';

/** Lines that cannot be read, units that do not fit, names that are not there: messages that the sample has no cause for. */
const broken = `notation 1

fabric torn like nothing_there {
  weight 12
  price 5,10 EUR/m2
  sheet 3 gal
  nonsense 3
}

recipe wreck "Wreck" {
  part {
    outline rounded 720 mm by corner
    edge round 3 kg
  }
  stack from tool absent {
    ply outer torn at 45, wrap onto body by 25 furlong
    core body foam_80 12 m
    strip
  }
  process infusion with epoxy_slow at -300 degC {
    releas semi_permanent
    lay outer to
    wait
  }
  expect mas <= 2 kg
  size short {
    outline circle 3 m
`;

const files: Readonly<Record<string, string>> = { ...sampleFiles, 'wreck.layup': broken };
const vocabulary = vocabularyOf(files);

/** Properties of answers that hold no words for people. */
const unspoken: ReadonlySet<string> = new Set(
  'uri key path mark kind name id layer side view d code source rule link recipe size verdict data newText anchor'.split(
    ' ',
  ),
);

let server: MemoryServer;
const ask = <T>(method: string, params: unknown): Promise<T> => server.client.sendRequest<T>(method, params);
const documentOf = (name: string) => ({ textDocument: { uri: server.uriOf(name) } });

beforeAll(async () => {
  server = await startMemoryServer(files, {
    initializationOptions: {
      locale: 'qps-ploc',
      translation: pseudoTable(serverTexts().texts.keys()),
      commandLinks: true,
    },
  });
  for (const [name, text] of Object.entries(files)) await server.open(name, text);
  await server.settled();
}, 120_000);

afterAll(() => {
  server.stop();
  useTranslation(undefined);
});

/** Every text below a value that is shown, with the name that it stands under. */
function shownIn(value: unknown, name = ''): string[] {
  if (typeof value === 'string') return unspoken.has(name) ? [] : [value];
  if (Array.isArray(value)) return value.flatMap((each) => shownIn(each, name));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) =>
    unspoken.has(key) && typeof each !== 'object' ? [] : shownIn(each, key),
  );
}

/** Our words in what is shown, each with the text that it stands in, once. */
function leaks(texts: readonly string[]): string[] {
  const found = new Map<string, string>();
  for (const text of new Set(texts)) {
    for (const word of english(text, vocabulary)) if (!found.has(word)) found.set(word, text);
  }
  return [...found].map(([word, text]) => {
    const at = Math.max(0, text.search(new RegExp(`(?<!\\w)${word}(?!\\w)`)) - 60);
    return `${word}: ${text.slice(at, at + 160).replace(/\s+/g, ' ')}`;
  });
}

/** What a page says, without its marks; drawings in it are asked for by themselves. */
const wordsOf = (html: string): string => html.replace(/<(style|script)[\s\S]*?<\/\1>/g, ' ').replace(/<[^>]+>/g, ' ');

const lineCount = (name: string): number => (files[name] ?? '').split('\n').length;
const whole = (name: string) => ({ start: { line: 0, character: 0 }, end: { line: lineCount(name), character: 0 } });

/** A place in each word of a file, once for each line that begins alike. */
function places(name: string): { line: number; character: number }[] {
  const seen = new Set<string>();
  return (files[name] ?? '').split('\n').flatMap((text, line) => {
    const head = /^\s*(\S*)/.exec(text)?.[1] ?? '';
    return [...text.replace(/\/\/.*$/, '').matchAll(/[A-Za-z_]\w*|\d[\d.]* ?[a-z%]\S*/g)].flatMap(
      ({ 0: word, index }) => {
        const key = `${head} ${word}`;
        return seen.has(key) ? [] : seen.add(key) && [{ line, character: index }];
      },
    );
  });
}

const hoverFiles = ['sled_deck.layup', 'shop.layup', 'tools.layup', 'materials.layup', 'first_try.layup'];

describe('in a made-up language nothing is said in ours by', () => {
  it('findings, and what stands beside them', async () => {
    await expect.poll(() => server.diagnostics.size, { timeout: 60_000 }).toBe(Object.keys(files).length);
    const told = [...server.diagnostics.values()].flat();
    expect(told.length).toBeGreaterThan(80);
    const related = told.flatMap(({ relatedInformation }) => relatedInformation ?? []);
    expect(leaks(shownIn([...told, ...related].map(({ message }) => message)))).toEqual([]);
  }, 120_000);

  it('fixes', async () => {
    const actions: { readonly title: string }[] = [];
    for (const [name, diagnostics] of server.diagnostics) {
      for (const diagnostic of diagnostics) {
        const { range } = diagnostic;
        actions.push(
          ...(await ask<{ title: string }[]>('textDocument/codeAction', {
            ...documentOf(name),
            range,
            context: { diagnostics: [diagnostic] },
          })),
        );
      }
    }
    expect(actions.length).toBeGreaterThan(100);
    expect(leaks(actions.map(({ title }) => title))).toEqual([]);
  }, 120_000);

  it.each(hoverFiles)(
    'hovers in %s',
    async (name) => {
      const texts: string[] = [];
      for (const position of places(name))
        texts.push(...shownIn(await ask('textDocument/hover', { ...documentOf(name), position })));
      expect(texts.length).toBeGreaterThan(20);
      expect(leaks(texts)).toEqual([]);
    },
    300_000,
  );

  it('figures beside the lines and above the recipes', async () => {
    for (const name of Object.keys(files)) {
      const hints = await ask('textDocument/inlayHint', { ...documentOf(name), range: whole(name) });
      const lenses = await ask<{ command?: { title: string } }[]>('textDocument/codeLens', documentOf(name));
      expect(leaks([...shownIn(hints), ...lenses.map(({ command }) => command?.title ?? '')])).toEqual([]);
    }
  }, 120_000);

  it('completion', async () => {
    const texts: string[] = [];
    const name = 'sled_deck.layup';
    for (const position of places(name)) {
      const list = await ask<{ items: readonly { detail?: string; documentation?: unknown }[] }>(
        'textDocument/completion',
        {
          ...documentOf(name),
          position,
        },
      );
      for (const { detail, documentation } of list?.items ?? []) texts.push(...shownIn([detail, documentation]));
    }
    expect(texts.length).toBeGreaterThan(500);
    expect(leaks(texts)).toEqual([]);
  }, 300_000);

  it('the outline of a file', async () => {
    for (const name of Object.keys(files)) {
      const symbols = await ask('textDocument/documentSymbol', documentOf(name));
      expect(leaks(shownIn(symbols))).toEqual([]);
    }
  });

  it('layer cards', async () => {
    const texts: string[] = [];
    for (const name of Object.keys(files)) {
      for (let line = 0; line < lineCount(name); line += 1) {
        const card = await ask('laybook/layerCard', { uri: server.uriOf(name), position: { line, character: 6 } });
        texts.push(...shownIn(card));
      }
    }
    expect(texts.length).toBeGreaterThan(500);
    expect(leaks(texts)).toEqual([]);
  }, 300_000);

  it('reports, expectations, drawings and the reference', async () => {
    const texts: string[] = [];
    for (const [name, text] of Object.entries(files)) {
      const uri = server.uriOf(name);
      for (const [, recipe] of text.matchAll(/^recipe (\w+)/gm)) {
        texts.push(...shownIn(await ask('laybook/report', { uri, recipe })));
        for (const view of ['plan', 'section'])
          texts.push(...shownIn(await ask('laybook/drawing', { uri, view, recipe: { recipe } })));
      }
      texts.push(...shownIn(await ask('laybook/expectations', { uri })));
    }
    for (const chapter of [undefined, 'notation', 'units', 'steps', 'materials', 'rules', 'cautions'])
      texts.push(...shownIn(await ask('laybook/reference', chapter === undefined ? {} : { chapter })));
    expect(texts.length).toBeGreaterThan(500);
    expect(leaks(texts)).toEqual([]);
  }, 300_000);

  it('build sheets, records and what is told of cut files', async () => {
    const texts: string[] = [];
    for (const [name, text] of Object.entries(files)) {
      const uri = server.uriOf(name);
      for (const [, recipe] of text.matchAll(/^recipe (\w+)/gm)) {
        for (const kind of ['sheet', 'records']) {
          const told = await ask<{ body?: string; title?: string; nothing?: string; offers?: unknown }>(
            'laybook/paper',
            {
              uri,
              kind,
              recipe,
              paper: 'a4',
              form: 'body',
            },
          );
          texts.push(...shownIn([told.title, told.nothing, told.offers, wordsOf(told.body ?? '')]));
        }
        const cut = await ask<{ files: readonly { words: string }[]; missing: readonly string[]; nothing?: string }>(
          'laybook/cutFiles',
          { uri, recipe, format: 'svg', by: 'piece', paper: 'a4', quantity: 2 },
        );
        texts.push(...shownIn([cut.files.map(({ words }) => words), cut.missing, cut.nothing]));
      }
    }
    expect(texts.length).toBeGreaterThan(100);
    expect(leaks(texts)).toEqual([]);
  }, 300_000);

  it('comparisons, and what is not there', async () => {
    const texts: string[] = [];
    texts.push(...shownIn(await ask('laybook/report', { uri: server.uriOf('shop.layup'), recipe: 'nothing' })));
    for (const material of ['triax_680', 'epoxy_slow', 'foam_pvc_80', 'foam_12']) {
      texts.push(...shownIn(await ask('laybook/compareMaterials', { material })));
      texts.push(...shownIn(await ask('laybook/findUses', { material })));
    }
    expect(texts.length).toBeGreaterThan(50);
    expect(leaks(texts)).toEqual([]);
  }, 300_000);

  it('names that are refused', async () => {
    const name = 'sled_deck.layup';
    const at = (files['sled_deck.layup'] ?? '').split('\n').findIndex((line) => /^\s*ply outer /.test(line));
    const said: string[] = [];
    for (const newName of ['no name', 'inner', 'body', 'from']) {
      const position = { line: at, character: (files['sled_deck.layup'] ?? '').split('\n')[at]?.indexOf('outer') ?? 0 };
      const params = { ...documentOf(name), position, newName };
      said.push(
        await ask('textDocument/rename', params).then(
          () => '',
          (error: Error) => error.message,
        ),
      );
    }
    expect(said.filter((each) => each !== '').length).toBeGreaterThan(1);
    expect(leaks(said)).toEqual([]);
  });
});

it('finds a text that is said in our language', () => {
  const said = '⟦ťĥé⟧ 2.3 kg of something heavier, see wrap/short';
  expect(leaks([said])).toEqual([`something: ${said}`, `heavier: ${said}`, `see: ${said}`]);
});
