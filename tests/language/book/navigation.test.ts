import { describe, expect, it } from 'vitest';
import { openMarked, place } from './where.ts';

describe('go to definition', () => {
  const definition = async (files: Record<string, string>) => {
    const { book, document, params, expected } = await openMarked(files);
    const links = (await book.services.lsp.DefinitionProvider?.getDefinition(document, params)) ?? [];
    return { found: links.map((link) => place(link.targetUri, link.targetSelectionRange)), expected };
  };

  it('leads to the entry in another file', async () => {
    const { found, expected } = await definition({
      'shop.layup': 'fabric <|cloth|> {\n}\n',
      'a.layup': 'recipe a {\n  stack {\n    ply p clo<|>th\n  }\n}\n',
    });
    expect(found).toEqual(expected);
  });

  it('leads from a copy to its line', async () => {
    const { found, expected } = await definition({
      'a.layup':
        'recipe a {\n  stack {\n    repeat 2 {\n      ply <|mat|> cloth\n    }\n  }\n  process hand {\n    lay mat.<|>2\n  }\n}\n',
    });
    expect(found).toEqual(expected);
  });

  it('leads into the stock library', async () => {
    const { found } = await definition({ 'a.layup': 'recipe a {\n  stack {\n    ply p csm<|>_300\n  }\n}\n' });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(/^layup-stock:\/fabrics-glass\.layup:\d+:7-14$/);
  });

  it('leads from `like stock` to the entry of stock', async () => {
    const { found } = await definition({ 'a.layup': 'fabric csm_300 like sto<|>ck {\n}\n' });
    expect(found[0]).toMatch(/^layup-stock:\/fabrics-glass\.layup:\d+:7-14$/);
  });

  it('leads on from inside a stock file', async () => {
    const { book } = await openMarked({ 'a.layup': 'recipe a {\n  stack {\n    ply p csm_<|>300\n  }\n}\n' });
    const { stock, lsp } = book.services;
    const uri = stock.find('material', 'csm_300')?.documentUri;
    const document = uri && stock.document(uri);
    if (document === undefined) throw new Error('stock has no csm_300');
    const offset = document.textDocument.getText().indexOf('fibre e_glass') + 8;
    const links = await lsp.DefinitionProvider?.getDefinition(document, {
      textDocument: { uri: document.uri.toString() },
      position: document.textDocument.positionAt(offset),
    });
    expect(links?.map((link) => link.targetUri)).toEqual(['layup-stock:/fibres.layup']);
  });
});

describe('find references and highlights', () => {
  const files = {
    'shop.layup': 'fabric <|cloth|> {\n}\nfabric twin like <|cloth|> {\n}\n',
    'a.layup': 'recipe a {\n  stack {\n    ply p <|clo<|>th|>\n    ply q <|cloth|>\n  }\n}\n',
    'b.layup': 'record a 2026-05-14 {\n  lot <|cloth|> "G-1"\n}\n',
  };

  it('finds every place of every file', async () => {
    const { book, document, params, expected } = await openMarked(files);
    const found = await book.services.lsp.ReferencesProvider?.findReferences(document, {
      ...params,
      context: { includeDeclaration: true },
    });
    expect(found?.map(({ uri, range }) => place(uri, range)).sort()).toEqual(expected);
  });

  it('highlights the places of the one file', async () => {
    const { book, document, params, expected } = await openMarked(files);
    const found = await book.services.lsp.DocumentHighlightProvider?.getDocumentHighlight(document, params);
    expect(found?.map(({ range }) => place(params.textDocument.uri, range)).sort()).toEqual(
      expected.filter((one) => one.startsWith('a.layup')),
    );
  });

  it('finds the places of a feed in a process that is like it', async () => {
    const { book, document, params, expected } = await openMarked({
      'a.layup':
        'recipe a {\n  process infusion {\n    feed <|f<|>1|> spiral_10\n    infuse {\n      open <|f1|>\n    }\n  }\n}\n',
      'b.layup': 'recipe b {\n  process infusion like a {\n    infuse {\n      open <|f1|>\n    }\n  }\n}\n',
      'c.layup': 'recipe c {\n  process infusion {\n    feed f1 spiral_10\n  }\n}\n',
    });
    const found = await book.services.lsp.ReferencesProvider?.findReferences(document, {
      ...params,
      context: { includeDeclaration: true },
    });
    expect(found?.map(({ uri, range }) => place(uri, range)).sort()).toEqual(expected);
  });
});
