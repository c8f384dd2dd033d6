import { describe, expect, it } from 'vitest';
import type { FoldingRange } from 'vscode-languageserver-protocol';
import { parsed, viewServices } from './parsed.ts';

const services = viewServices();

/** `first-last kind`, lines counted from zero */
function folds(text: string): string[] {
  const document = parsed(services, text);
  const params = { textDocument: { uri: document.uri.toString() } };
  const found = services.lsp.FoldingRangeProvider?.getFoldingRanges(document, params) as FoldingRange[];
  return found.map((fold) => `${fold.startLine}-${fold.endLine}${fold.kind === undefined ? '' : ` ${fold.kind}`}`);
}

describe('folding', () => {
  it('hides what a block holds and keeps its closing brace in sight', () => {
    expect(folds('recipe a {\n  part {\n    edge square\n  }\n\n}\n\n\nfabric b {\n  fibre c\n}\n')).toEqual([
      '0-4',
      '1-2',
      '8-9',
    ]);
    expect(folds('fabric b { fibre c }\nfabric c {\n}\n')).toEqual([]);
  });

  it('folds a statement that goes on over lines, with the comments between', () => {
    expect(folds('stack {\n  ply a b\n    // why\n    , net\n    , turned over\n  // next\n  ply c d\n}\n')).toEqual([
      '0-6',
      '1-4',
    ]);
  });

  it('folds runs of comment lines and long comments', () => {
    expect(folds('// one\n// two\n// three\n\n// alone\n/* long\n\n   long */\nfibre a {}\n')).toEqual([
      '0-2 comment',
      '5-7 comment',
    ]);
    expect(folds('fibre a {} // one\n// two\n')).toEqual([]);
  });

  it('folds regions', () => {
    expect(folds('// #region cloth\nfibre a {}\n// #endregion\n')).toEqual(['0-2 region']);
  });

  it('folds the other entries where braces do not balance', () => {
    expect(folds('fabric a {\n  price ?\n\nfabric b {\n  price ?\n}\n')).toEqual(['3-4']);
  });
});
