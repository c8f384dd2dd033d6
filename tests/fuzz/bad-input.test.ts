import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { DiagnosticSeverity } from 'vscode-languageserver-protocol';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { badInputs } from './bad-inputs.ts';
import { around } from './corpus.ts';

/*
 * Texts that nobody should write: each is told, in words, and the server is there for the next. One that never ends runs into the
 * clock of its test, which is long: a machine that others load takes several times as long as a quiet one.
 */

let server: MemoryServer;
let errors: { readonly mock: { readonly calls: readonly unknown[][] } };
beforeAll(async () => {
  errors = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  server = await startMemoryServer(around);
  await server.open('bad.layup', '');
  await server.settled();
});
afterEach(() => vi.clearAllMocks());
afterAll(() => {
  server.stop();
  vi.restoreAllMocks();
});

/** No person should read these; the texts above have none of them in their own words. */
const nonsense = /\b(?:NaN|-?Infinity|undefined|null)\b|\[object|broke down here/;

for (const [sort, inputs] of Object.entries(badInputs)) {
  describe(sort, () => {
    for (const { name, text, told } of inputs) {
      it(`${name}: ${told === 'clean' ? 'no error' : 'is told'}`, async () => {
        const bad = text();
        await server.change('bad.layup', { text: bad });
        await server.settled();
        expect(errors.mock.calls.map((call) => call.map(String).join(' '))).toEqual([]);
        expect(server.log).toEqual([]);

        const diagnostics = server.diagnostics.get('bad.layup') ?? [];
        for (const { message } of diagnostics) expect(String(message)).not.toMatch(nonsense);
        const rules = diagnostics.map(({ code }) => String(code));
        const errorsTold = diagnostics.filter(({ severity }) => severity === DiagnosticSeverity.Error);
        if (told === 'clean') expect(errorsTold.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
        else
          expect(
            rules.some((rule) => told.test(rule)),
            `${rules.slice(0, 5).join(', ')} of ${rules.length}`,
          ).toBe(true);

        await expectAnswers(bad);
      }, 120_000);
    }
  });
}

/** Asks what an editor asks of a file that it shows: at its beginning, in its middle and where it was told something. */
async function expectAnswers(text: string): Promise<void> {
  const textDocument = { uri: server.uriOf('bad.layup') };
  const lines = text.slice(0, 20_000).split(/\r\n|\n|\r/);
  const told = (server.diagnostics.get('bad.layup') ?? []).slice(0, 3).map(({ range }) => range.start);
  for (const position of [{ line: Math.floor(lines.length / 2), character: 6 }, ...told]) {
    const hover = await server.client.sendRequest('textDocument/hover', { textDocument, position });
    expect(JSON.stringify((hover as { contents?: unknown } | null)?.contents ?? '')).not.toMatch(nonsense);
    await server.client.sendRequest('textDocument/completion', { textDocument, position });
  }
  const options = { tabSize: 2, insertSpaces: true };
  for (const [request, more] of [
    ['documentSymbol', {}],
    ['foldingRange', {}],
    ['formatting', { options }],
    ['semanticTokens/full', {}],
  ] as const) {
    await server.client.sendRequest(`textDocument/${request}`, { textDocument, ...more });
  }
}
