import { readFileSync } from 'node:fs';
import { AstUtils } from 'langium';
import { afterAll, describe, expect, it } from 'vitest';
import { isStock } from '../../../language/book/stock.ts';
import type { Book } from '../../../language/grammar/generated/ast.ts';
import { viewModule } from '../../../language/lsp/module.ts';
import type { LayupSemanticTokenProvider } from '../../../language/lsp/semantic-tokens.ts';
import { highlightsOf } from '../../../language/view/tokens/index.ts';
import { isVerbWord } from '../../../language/view/words.ts';
import { openBook } from '../../harness/book.ts';

const sample = readFileSync(new URL('../notation-sample.layup', import.meta.url), 'utf8');
const soft = `fabric core "A cloth with an awkward name" {
  fibre resin
}
recipe size {
  let net = 4 mm
  stack from tool tool {
    ply tape core at 0 deg, wrap onto mesh by net
    core mesh foam_80 2 in
    patch film core at 45 deg, over bag
  }
  process hand with resin {
    lay tape to film
    tape sealant_12
    conjure tape
    trim net
  }
}
`;
const book = await openBook({ 'sample.layup': sample, 'soft.layup': soft }, { modules: [viewModule] });
afterAll(() => book.dispose());

/** `word: type modifiers` in the order of the text */
function shown(name: string): string[] {
  const document = book.document(name);
  const lines = document.textDocument.getText().split('\n');
  return highlightsOf(document.parseResult.value as Book, {
    isVerb: isVerbWord,
    isStock: (entry) => isStock(AstUtils.getDocument(entry).uri),
  }).map(({ line, character, length, type, modifiers }) =>
    [`${line}:${(lines[line] ?? '').slice(character, character + length)}`, type, ...modifiers].join(' '),
  );
}

describe('semantic highlighting', () => {
  it('shows what names stand for', () => {
    const all = shown('sample.layup').map((token) => token.replace(/^\d+:/, ''));
    for (const token of [
      'triax_680 class declaration',
      'e_glass class defaultLibrary',
      'ply keyword',
      'outer variable declaration',
      'triax_680 class',
      'landing parameter declaration',
      'landing parameter',
      'sled_tool class declaration',
      'viscosity property',
      '290 number',
      'mPa.s number',
      'release function',
      'f1 variable declaration',
      'f1 variable',
      'rider event declaration',
      'rider event',
      'short enumMember declaration',
      'sled_deck struct declaration',
      'sled_deck struct',
      'mass property',
      'mount variable declaration',
      'mount variable',
    ])
      expect(all).toContain(token);
  });

  it('does not light up a word of the notation that is a name', () => {
    expect(shown('soft.layup')).toEqual([
      '0:fabric keyword',
      '0:core class declaration',
      '1:fibre property',
      '1:resin class',
      '3:recipe keyword',
      '3:size struct declaration',
      '4:let keyword',
      '4:net parameter declaration',
      '4:4 number',
      '4:mm number',
      '5:stack keyword',
      '5:tool class',
      '6:ply keyword',
      '6:tape variable declaration',
      '6:core class',
      '6:0 number',
      '6:deg number',
      '6:mesh variable',
      '6:net parameter',
      '7:core keyword',
      '7:mesh variable declaration',
      '7:foam_80 class',
      '7:2 number',
      '7:in number',
      '8:patch keyword',
      '8:film variable declaration',
      '8:core class',
      '8:45 number',
      '8:deg number',
      '8:bag variable',
      '10:process keyword',
      '10:resin class',
      '11:lay function',
      '11:tape variable',
      '11:film variable',
      '12:tape function',
      '12:sealant_12 class defaultLibrary',
      '13:tape variable',
      '14:trim function',
    ]);
  });

  it('tells the editor in numbers, each place by the one before', () => {
    const provider = book.services.lsp.SemanticTokenProvider as LayupSemanticTokenProvider;
    const document = book.document('soft.layup');
    const textDocument = { uri: document.uri.toString() };
    const { data } = provider.semanticHighlight(document, { textDocument });
    const types = provider.semanticTokensOptions.legend.tokenTypes;
    expect(data.slice(0, 10)).toEqual([0, 0, 6, types.indexOf('keyword'), 0, 0, 7, 4, types.indexOf('class'), 1]);
    expect(data.length % 5).toBe(0);
    const range = { start: { line: 11, character: 0 }, end: { line: 11, character: 99 } };
    const part = provider.semanticHighlightRange(document, { textDocument, range });
    expect(part.data.slice(0, 4)).toEqual([11, 4, 3, types.indexOf('function')]);
    expect(part.data.length).toBe(15);
  });
});
