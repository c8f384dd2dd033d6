import { afterAll, describe, expect, it } from 'vitest';
import { type CompletionList, SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver-protocol';
import { viewModule } from '../../../language/lsp/module.ts';
import { rules } from '../../../language/rules/generated/rules.ts';
import { NamesOfBook } from '../../../language/view/complete/book-names.ts';
import { openBook } from '../../harness/book.ts';

const recipe = `recipe lid "Hatch lid" {
  stack from tool table {
    ply outer 
    mirror about 
  }
  size small {
    quantity 2
  }
}
recipe lid_b like lid {
  process hand {
    lay 
    bag film_50, accept 
  }
}
record lid 
`;
const book = await openBook(
  {
    'shop.layup':
      'shop "Hollow Tarn Workshop" {\n  currency GBP\n}\ntool table "Glass table" {\n  flat 2 m by 1 m\n}\n',
    'cloth.layup': `fabric own_440 "Own cloth" {\n  layers stitched 45 deg 220 g/m2, -45 deg 220 g/m2\n  price \n}
fabric biax_440 like stock {\n  price 5.10 GBP/m2\n}
consumable own_peel {\n  kind peel\n}\n`,
    'lid.layup': recipe,
  },
  { modules: [viewModule] },
);
afterAll(() => book.dispose());
const names = new NamesOfBook(book.services);

/** Labels offered behind a stretch of a file. */
async function offered(file: string, behind: string): Promise<string[]> {
  const document = book.document(file);
  const text = document.textDocument.getText();
  const position = document.textDocument.positionAt(text.indexOf(behind) + behind.length);
  const params = { textDocument: { uri: document.uri.toString() }, position };
  const list = (await book.services.lsp.CompletionProvider?.getCompletion(document, params)) as CompletionList;
  expect(list.isIncomplete).toBe(false);
  return list.items.map((item) => item.label);
}

describe('names of the book', () => {
  it('are those of the workspace, then those of stock that it does not replace', () => {
    const materials = names.materials();
    expect(materials.find((one) => one.name === 'own_440')).toEqual({
      name: 'own_440',
      kind: 'fabric',
      stock: false,
      title: 'Own cloth',
      detail: '440 g/m2',
    });
    expect(materials.filter((one) => one.name === 'biax_440').map((one) => one.stock)).toEqual([false]);
    expect(materials.find((one) => one.name === 'nylon_85')).toMatchObject({
      kind: 'consumable',
      consumableKind: 'peel',
      stock: true,
    });
    expect(names.tools().map((tool) => tool.name)).toContain('table');
  });

  it('are known of stock without reading a file of it', () => {
    expect(names.materials().length).toBeGreaterThan(50);
    expect(book.services.stock.filesRead.filter((file) => file.startsWith('pastes'))).toEqual([]);
  });

  it('reach into the recipe that another one is like', () => {
    expect(names.inside('lid_b').map((one) => `${one.kind} ${one.name}`)).toEqual(['layer outer', 'size small']);
    expect(names.inside('nowhere')).toEqual([]);
  });

  it('come with the currency of the shop', async () => {
    expect(names.currency()).toBe('GBP');
    await book.edit(
      'cloth.layup',
      book.document('cloth.layup').textDocument.getText().replace('price \n', 'price 5 \n'),
    );
    expect(await offered('cloth.layup', 'price 5 ')).toContain('GBP/m2');
  });
});

describe('completion in a book', () => {
  it('offers what the book has', async () => {
    const cloth = await offered('lid.layup', 'ply outer ');
    expect(cloth[0]).toBe('own_440');
    expect(cloth).toContain('biax_440');
    expect(cloth).not.toContain('own_peel');
    expect(await offered('lid.layup', 'lay ')).toEqual(expect.arrayContaining(['outer', 'stack', 'rest']));
    expect(await offered('lid.layup', 'record lid ')).toEqual(['small']);
  });

  it('offers every rule behind accept, those of what the line is about first', async () => {
    const labels = await offered('lid.layup', 'accept ');
    expect([...labels].sort()).toEqual(rules.map((rule) => rule.name).sort());
    expect(labels.slice(0, 3).every((label) => label.startsWith('bag/'))).toBe(true);
  });
});

describe('symbols of the workspace', () => {
  it('are its entries, each with its picture', async () => {
    const found = (await book.shared.lsp.WorkspaceSymbolProvider?.getSymbols({ query: 'lid' })) as WorkspaceSymbol[];
    expect(found.map((symbol) => [symbol.name, symbol.kind])).toEqual(
      expect.arrayContaining([
        ['lid', SymbolKind.Package],
        ['lid_b', SymbolKind.Package],
      ]),
    );
    const cloth = (await book.shared.lsp.WorkspaceSymbolProvider?.getSymbols({
      query: 'own_440',
    })) as WorkspaceSymbol[];
    expect(cloth.map((symbol) => symbol.kind)).toEqual([SymbolKind.Class]);
  });
});
