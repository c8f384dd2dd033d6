import { TextDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import type { Range, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { nameOf, type TestBook } from '../../harness/book.ts';
import { meanings, openMarked, place } from './where.ts';

type Files = Readonly<Record<string, string>>;

async function rename(files: Files, newName: string) {
  const { book, document, params, expected } = await openMarked(files);
  const provider = book.services.lsp.RenameProvider;
  if (provider === undefined) throw new Error('there is no rename');
  const range = (await provider.prepareRename(document, params)) as Range | undefined;
  const edit = await provider.rename(document, { ...params, newName });
  return { book, edit, range: range && place(params.textDocument.uri, range), expected };
}

const places = (edit: WorkspaceEdit | undefined): string[] =>
  Object.entries(edit?.changes ?? {})
    .flatMap(([uri, edits]) => edits.map(({ range }) => place(uri, range)))
    .sort();

/** Takes the edit into the book, as the editor does. */
async function apply(book: TestBook, edit: WorkspaceEdit | undefined): Promise<void> {
  for (const [uri, edits] of Object.entries(edit?.changes ?? {})) {
    await book.edit(nameOf(uri), TextDocument.applyEdits(book.document(nameOf(uri)).textDocument, edits));
  }
}

const texts = (book: TestBook): Record<string, string> =>
  Object.fromEntries(
    [...book.shared.workspace.LangiumDocuments.all].map((one) => [nameOf(one.uri), one.textDocument.getText()]),
  );

describe('rename', () => {
  const cases: Readonly<Record<string, Files>> = {
    'a material, over all files': {
      'shop.layup': 'fabric <|cl<|>oth|> {\n}\nfabric twin like <|cloth|> {\n}\npaste p {\n  from <|cloth|>\n}\n',
      'a.layup':
        'recipe a {\n  stack {\n    ply p <|cloth|> at 0 deg\n  }\n  process hand {\n    peel <|cloth|>\n  }\n}\n',
      'r.layup': 'record a 2026-05-14 {\n  lot <|cloth|> "1"\n}\n',
    },
    'a tool, from a step': {
      'shop.layup': 'tool <|mould|> {\n}\n',
      'a.layup': 'recipe a {\n  stack from tool <|mould|> {\n  }\n  process hand {\n    clean <|mo<|>uld|>\n  }\n}\n',
    },
    'a recipe': {
      'a.layup': 'recipe <|a|> {\n}\n',
      'b.layup': 'recipe b like <|a|> {\n  process infusion like <|a|>\n}\n',
      'r.layup': 'record <|a<|>|> 2026-05-14 {\n}\n',
    },
    'a layer, with its copies and in recipes like it': {
      'a.layup':
        'recipe a {\n  stack {\n    repeat 2 {\n      ply <|mat|> cloth\n    }\n    core c foam, groove for <|mat|>\n    mirror about <|mat|>\n  }\n' +
        '  process hand {\n    lay <|ma<|>t|>.1 to <|mat|>.2\n    lay <|mat|>.m\n    drill 2 mm in <|mat|>.2.m\n  }\n  size s {\n    without <|mat|>\n  }\n}\n',
      'b.layup': 'recipe b like a {\n  change <|mat|>, darts 2\n}\n',
    },
    'a zone': {
      'a.layup':
        'recipe a {\n  part {\n    zone <|mo<|>unt|> circle 20 mm\n  }\n  stack {\n    patch p cloth, over <|mount|>\n  }\n}\n',
    },
    'a feed': {
      'a.layup':
        'recipe a {\n  process infusion {\n    feed <|one|> spiral_10\n    infuse {\n      open <|on<|>e|>\n      clamp <|one|> when full\n    }\n  }\n}\n',
    },
    'a let, with those that stand in its place in a size and in a likeness': {
      'a.layup':
        'recipe a {\n  let <|lan<|>ding|> = 25 mm\n  let twice = 2 * <|landing|>\n  stack {\n    ply p cloth, wrap onto p by <|landing|>\n  }\n  size s {\n    let <|landing|> = 20 mm\n  }\n}\n',
      'b.layup': 'recipe b like a {\n  let <|landing|> = 30 mm\n}\n',
      'c.layup': 'recipe c {\n  let landing = 1 mm\n}\n',
    },
    'a load': {
      'a.layup': 'recipe a {\n  load <|ri<|>der|> {\n    weight 95 kg\n  }\n  expect sag under <|rider|> <= 12 mm\n}\n',
    },
    'a size': {
      'a.layup': 'recipe a {\n  size <|sh<|>ort|> {\n    quantity 4\n  }\n}\n',
      'r.layup': 'record a <|short|> 2026-05-14 {\n}\n',
    },
  };

  it.each(Object.entries(cases))('%s', async (_, files) => {
    const { book, edit, range, expected } = await rename(files, 'new_name');
    expect(places(edit)).toEqual(expected);
    expect(expected).toContain(range);
    const before = texts(book);
    await apply(book, edit);
    // all places mean the same thing as before, and the way back leads to the text from before
    const found = Object.keys(before).flatMap((file) =>
      ['new_name', 'new_name.1', 'new_name.2', 'new_name.m'].flatMap((name) => meanings(book, file, name)),
    );
    expect(found.length).toBeGreaterThan(0);
    expect(found).not.toContain(undefined);
    const back = await book.services.lsp.RenameProvider?.rename(
      book.document(nameOf(Object.keys(edit?.changes ?? {})[0] ?? '')),
      {
        textDocument: { uri: '' },
        position: (Object.values(edit?.changes ?? {})[0] ?? [])[0]?.range.start ?? { line: 0, character: 0 },
        newName: 'unused',
      },
    );
    expect(places(back).length).toBe(expected.length);
  });

  it('lets `like stock` say which entry it means, since the name no longer does', async () => {
    const { book, edit } = await rename(
      { 'a.layup': 'fabric csm_<|>300 like stock {\n  price 2 EUR/m2\n}\n' },
      'mat_300',
    );
    await apply(book, edit);
    expect(texts(book)['a.layup']).toBe('fabric mat_300 like csm_300 {\n  price 2 EUR/m2\n}\n');
    expect(meanings(book, 'a.layup', 'csm_300')).toEqual(['layup-stock:/fabrics-glass.layup Material csm_300']);
  });

  const refused: readonly [string, Files, string, RegExp][] = [
    [
      'an entry of stock',
      { 'a.layup': 'recipe a {\n  stack {\n    ply p csm_<|>300\n  }\n}\n' },
      'x',
      /stock library, which is read only/,
    ],
    ['the word stock', { 'a.layup': 'fabric csm_300 like st<|>ock {\n}\n' }, 'x', /`stock` is no name/],
    ['a name with a space', { 'a.layup': 'tool mou<|>ld {\n}\n' }, 'two words', /`two words` is no name/],
    ['a name that begins with a digit', { 'a.layup': 'tool mou<|>ld {\n}\n' }, '2nd', /`2nd` is no name/],
    [
      'a name with a point, as copies have',
      { 'a.layup': 'recipe a {\n  stack {\n    ply ma<|>t cloth\n  }\n}\n' },
      'mat.2',
      /is no name/,
    ],
    ['a connective', { 'a.layup': 'tool mou<|>ld {\n}\n' }, 'with', /has a meaning of its own/],
    [
      'a layer called rest',
      { 'a.layup': 'recipe a {\n  stack {\n    ply ma<|>t cloth\n  }\n}\n' },
      'rest',
      /has a meaning of its own/,
    ],
    [
      'a name that is taken',
      { 'a.layup': 'tool mou<|>ld {\n}\n', 'b.layup': 'tool other {\n}\n' },
      'other',
      /there is a tool `other` already/,
    ],
    [
      'a layer of the recipe that this one is like',
      {
        'a.layup': 'recipe a {\n  stack {\n    ply p cloth\n  }\n}\n',
        'b.layup': 'recipe b like a {\n  stack {\n    ply q<|> cloth\n  }\n}\n',
      },
      'p',
      /there is a layer `p` in this recipe already/,
    ],
    [
      'a name of stock that the book uses',
      { 'a.layup': 'fabric own<|> {\n}\n', 'b.layup': 'recipe b {\n  stack {\n    ply q csm_300\n  }\n}\n' },
      'csm_300',
      /of the stock library is used/,
    ],
  ];
  it.each(refused)('refuses %s', async (_, files, newName, message) => {
    await expect(rename(files, newName)).rejects.toThrow(message);
  });

  it('has nothing to rename on a word, a number or a name that nothing bears', async () => {
    for (const text of [
      're<|>cipe a {\n}\n',
      'recipe a {\n  revision 4<|>\n}\n',
      'recipe a {\n  stack {\n    ply p unhe<|>ard\n  }\n}\n',
    ]) {
      const { edit, range } = await rename({ 'a.layup': text }, 'x');
      expect([edit, range]).toEqual([undefined, undefined]);
    }
  });
});
