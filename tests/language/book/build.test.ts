import { DocumentState, TextDocument, URI } from 'langium';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import type { Findings } from '../../../language/book/findings-port.ts';
import { nameOf, openBook } from '../../harness/book.ts';
import { meanings } from './where.ts';

const shop = 'fabric cloth {\n  fibre e_glass\n}\ntool mould {\n  count 1\n}\n';
const recipe = (name: string, cloth = 'cloth'): string => `recipe ${name} {
  stack from tool mould {
    ply outer ${cloth} at 0 deg
  }
}
`;
const four = {
  'shop.layup': shop,
  'a.layup': recipe('a'),
  'b.layup': recipe('b'),
  'c.layup': recipe('c'),
  'd.layup': recipe('d', 'csm_300'),
};

describe('what an edit reaches', () => {
  it('links only the recipe that was edited', async () => {
    const book = await openBook(four, { open: ['a.layup'] });
    book.takeWork();
    await book.edit('a.layup', recipe('a').replace('0 deg', '45 deg'));
    expect(book.takeWork()).toEqual({ parsed: ['a.layup'], linked: ['a.layup'], validated: ['a.layup'] });
  });

  it('links only the recipe that was edited when every recipe has a name that is missing', async () => {
    const files = Object.fromEntries(
      Object.entries(four).map(([name, text]) => [name, text.replace('outer cloth', 'outer unheard_of')]),
    );
    const book = await openBook(files, { open: ['a.layup'] });
    book.takeWork();
    await book.edit('a.layup', recipe('a', 'unheard_of').replace('0 deg', '45 deg'));
    expect(book.takeWork().linked).toEqual(['a.layup']);
  });

  it('links those that name a material again when it is edited, and no others', async () => {
    const book = await openBook({ ...four, 'other.layup': 'tool spare {\n}\n' });
    book.takeWork();
    await book.edit('shop.layup', shop.replace('e_glass', 'c_glass'));
    const { parsed, linked } = book.takeWork();
    expect(parsed).toEqual(['shop.layup']);
    expect(linked).toEqual(['shop.layup', 'a.layup', 'b.layup', 'c.layup', 'd.layup']);
    expect(meanings(book, 'b.layup', 'cloth')).toEqual(['shop.layup Material cloth']);
    // a stale node would still say e_glass
    const link = book.document('b.layup').references.find((one) => one.$refText === 'cloth');
    expect(link && 'ref' in link ? link.ref?.$cstNode?.text : '').toContain('c_glass');
  });

  it('takes open files through to their findings before the others begin', async () => {
    const asked: string[] = [];
    const findings: Findings = {
      of: (document) => {
        const link = document.references.find((one) => one.$refText === 'cloth');
        asked.push(`${nameOf(document.uri)} ${link?.error === undefined}`);
        return [];
      },
    };
    const book = await openBook(four, { open: ['c.layup'], modules: [{ findings: () => findings }] });
    expect(asked[0]).toBe('c.layup true');
    expect(asked.length).toBe(5);
    asked.length = 0;
    const order: string[] = [];
    book.shared.workspace.DocumentBuilder.onDocumentPhase(DocumentState.Linked, (document) => {
      order.push(`link ${nameOf(document.uri)}`);
    });
    book.shared.workspace.DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
      order.push(`check ${nameOf(document.uri)}`);
    });
    await book.edit('shop.layup', shop.replace('e_glass', 'c_glass'));
    const first = order.slice(0, 4);
    expect(first).toEqual(['link c.layup', 'link shop.layup', 'check c.layup', 'check shop.layup']);
    expect(order.slice(4).sort()).toEqual(
      ['a', 'b', 'd'].flatMap((name) => [`check ${name}.layup`, `link ${name}.layup`]).sort(),
    );
  });

  it('links a recipe again when the name that it waits for appears, and when it goes', async () => {
    const book = await openBook({ 'a.layup': recipe('a'), 'b.layup': recipe('b', 'other') });
    expect(meanings(book, 'a.layup', 'cloth')).toEqual([undefined]);
    book.takeWork();
    await book.edit('shop.layup', shop.replace('tool mould', 'tool spare'));
    expect(book.takeWork().linked).toEqual(['shop.layup', 'a.layup']);
    expect(meanings(book, 'a.layup', 'cloth')).toEqual(['shop.layup Material cloth']);
    await book.remove('shop.layup');
    expect(book.takeWork().linked).toEqual(['a.layup']);
    expect(meanings(book, 'a.layup', 'cloth')).toEqual([undefined]);
    await book.edit('shop.layup', shop);
    expect(meanings(book, 'a.layup', 'cloth')).toEqual(['shop.layup Material cloth']);
    expect(meanings(book, 'b.layup', 'mould')).toEqual(['shop.layup Tool mould']);
  });

  it('links a recipe again when an entry of the workspace takes the place of one of stock', async () => {
    const book = await openBook({ 'd.layup': recipe('d', 'csm_300') });
    expect(meanings(book, 'd.layup', 'csm_300')).toEqual(['layup-stock:/fabrics-glass.layup Material csm_300']);
    await book.edit('own.layup', 'fabric csm_300 {\n}\n');
    expect(meanings(book, 'd.layup', 'csm_300')).toEqual(['own.layup Material csm_300']);
  });

  it('links a recipe again when the one that it is like changes, however far', async () => {
    const book = await openBook({
      'a.layup': recipe('a'),
      'b.layup': 'recipe b like a {\n}\n',
      'c.layup': 'recipe c like b {\n  without inner\n}\n',
    });
    expect(meanings(book, 'c.layup', 'inner')).toEqual([undefined]);
    await book.edit('a.layup', recipe('a').replace('outer', 'inner'));
    expect(meanings(book, 'c.layup', 'inner')).toEqual(['a.layup ClothLayer inner']);
  });

  it('looks at recipes and records again when the shop changes', async () => {
    const book = await openBook({
      ...four,
      'hall.layup': 'shop "One" {\n  ambient 21 degC\n}\n',
      'm.layup': 'tool spare {\n}\n',
    });
    expect(book.services.names.shops().map((shop) => nameOf(shop.documentUri))).toEqual(['hall.layup']);
    book.takeWork();
    await book.edit('hall.layup', 'shop "One" {\n  ambient 18 degC\n}\n');
    expect([...book.takeWork().validated].sort()).toEqual(['a.layup', 'b.layup', 'c.layup', 'd.layup', 'hall.layup']);
  });

  it('drains what a cancelled update left, and answers the same', async () => {
    const book = await openBook(four);
    const { DocumentBuilder, WorkspaceLock } = book.shared.workspace;
    const { uri } = book.document('shop.layup');
    const first = WorkspaceLock.write((token) => DocumentBuilder.update([uri], [], token));
    const second = WorkspaceLock.write((token) => DocumentBuilder.update([book.document('a.layup').uri], [], token));
    await Promise.all([first, second]);
    for (const name of ['a', 'b', 'c', 'd']) {
      expect(book.document(`${name}.layup`).state).toBe(DocumentState.Validated);
      expect(meanings(book, `${name}.layup`, 'mould')).toEqual(['shop.layup Tool mould']);
    }
  });
});

describe('what the book shows', () => {
  const finding = (message: string): Diagnostic => ({
    message,
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
  });

  it('only the findings that it is given: no message of the parser or the linker', async () => {
    const text = 'recipe a {\n  stack {\n    ply p unheard_of at at at\n  }\n';
    expect((await openBook({ 'a.layup': text })).document('a.layup').diagnostics).toEqual([]);
    const findings: Findings = { of: (document) => [finding(nameOf(document.uri))] };
    const book = await openBook({ 'a.layup': text, 'b.layup': '' }, { modules: [{ findings: () => findings }] });
    expect(book.document('a.layup').diagnostics).toEqual([finding('a.layup')]);
    expect(book.document('b.layup').diagnostics).toEqual([finding('b.layup')]);
  });

  it('goes on where the findings of one document cannot be had', async () => {
    const findings: Findings = {
      of: (document) => {
        if (nameOf(document.uri) === 'a.layup') throw new RangeError('as a fault would');
        return [finding('b')];
      },
    };
    const book = await openBook({ 'a.layup': '', 'b.layup': '' }, { modules: [{ findings: () => findings }] });
    expect(book.document('a.layup').diagnostics).toEqual([]);
    expect(book.document('b.layup').diagnostics).toEqual([finding('b')]);
  });

  it('skips folders that hold no recipes of the shop, and other files', async () => {
    const book = await openBook({
      'a.layup': '',
      'deep/er/b.layup': '',
      'node_modules/x/c.layup': '',
      'dist/d.layup': '',
      '.git/e.layup': '',
      'notes.txt': '',
    });
    const names = [...book.shared.workspace.LangiumDocuments.all].map((document) => nameOf(document.uri));
    expect(names.sort()).toEqual(['a.layup', 'deep/er/b.layup']);
  });

  it('does not take the other side of a comparison for a file of the book', async () => {
    const book = await openBook({ 'a.layup': 'tool t {\n}\n' });
    const { LangiumDocuments, DocumentBuilder, TextDocuments } = book.shared.workspace;
    const uri = URI.parse('git:/book/a.layup');
    TextDocuments.set(TextDocument.create(uri.toString(), 'layup', 1, 'tool t {\n}\ntool gone {\n}\n'));
    await DocumentBuilder.update([uri], []);
    expect(LangiumDocuments.hasDocument(uri)).toBe(true);
    expect(book.services.names.entries('tool', 't').length).toBe(1);
    expect(book.services.names.entries('tool', 'gone').length).toBe(0);
  });
});

describe('half-typed names', () => {
  it('never stop a build, wherever the line is cut', async () => {
    const lines = [
      'fabric own like stock',
      'resin r like',
      'recipe b like a {',
      'stack from tool mould',
      'ply p mat.2.m at 0 deg, wrap onto p.1 by landing',
      'mirror about p',
      'process infusion like a with r',
      'lay a.m to b.2.',
      'open f.',
      'record a short 2026-05-14',
      'let x = x + y.',
      'change p., darts',
    ];
    const book = await openBook({ 'a.layup': recipe('a'), 'x.layup': '' }, { open: ['x.layup'] });
    for (const line of lines) {
      for (let end = 1; end <= line.length; end++) {
        for (const text of [
          line.slice(0, end),
          `recipe a {\n${line.slice(0, end)}\n}\n`,
          `recipe a {\nstack {\n${line.slice(0, end)}\n}\nprocess hand {\n${line.slice(0, end)}\n}\n}`,
        ]) {
          await book.edit('x.layup', text);
          const document = book.document('x.layup');
          expect(document.state).toBe(DocumentState.Validated);
          for (const link of document.references) expect(link.error?.message ?? '').not.toMatch(/error occurred/);
        }
      }
    }
    expect(meanings(book, 'a.layup', 'mould')).toEqual([undefined]);
  });

  it('reads a file that is too long to one problem and nothing else', async () => {
    const book = await openBook({ 'long.layup': 'tool t {\n}\n'.repeat(100_000), 'a.layup': 'tool u {\n}\n' });
    const { parseResult } = book.document('long.layup');
    expect(parseResult.value).toMatchObject({ entries: [] });
    expect((parseResult.lexerReport as unknown as { problems: unknown[] }).problems.length).toBe(1);
    expect(book.services.names.entries('tool', 't').length).toBe(0);
    expect(book.services.names.entries('tool', 'u').length).toBe(1);
  });
});
