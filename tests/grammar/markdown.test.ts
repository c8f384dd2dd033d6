/** Fenced fragments of notation in Markdown have its colours, and the text behind them is Markdown again. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, parseRawGrammar, Registry } from 'vscode-textmate';

const root = join(import.meta.dirname, '..', '..');
const require = createRequire(import.meta.url);
const files: Readonly<Record<string, string>> = {
  'source.layup': 'syntaxes/layup.tmLanguage.json',
  'markdown.layup.codeblock': 'syntaxes/markdown-layup.tmLanguage.json',
};
/** As much of Markdown as a grammar that is injected needs: a root. */
const host = JSON.stringify({ scopeName: 'text.html.markdown', patterns: [{ match: '^# .*$', name: 'heading' }] });

it('a fence of layup is coloured as a recipe is', async () => {
  const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
  await loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) as ArrayBuffer);
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: async (scope) => {
      const file = files[scope];
      return parseRawGrammar(file === undefined ? host : readFileSync(join(root, file), 'utf8'), `${scope}.json`);
    },
    getInjections: (scope) => (scope === 'text.html.markdown' ? ['markdown.layup.codeblock'] : []),
  });
  const grammar = await registry.loadGrammar('text.html.markdown');
  const scopes: string[][] = [];
  let state = INITIAL;
  for (const line of ['# A page', '```layup mended', 'recipe lid {', '}', '```', '# Behind it']) {
    const result = grammar?.tokenizeLine(line, state);
    state = result?.ruleStack ?? state;
    scopes.push(result?.tokens.flatMap((token) => token.scopes) ?? []);
  }
  expect(scopes[0]).toContain('heading');
  expect(scopes[2]).toContain('meta.embedded.block.layup');
  expect(scopes[2]?.filter((scope) => scope.endsWith('.layup')).length).toBeGreaterThan(2);
  expect(scopes[5]).toContain('heading');
  expect(scopes[5]).not.toContain('meta.embedded.block.layup');
});
