/** The page of a rule with the case on top, and figures that a hover lets copy. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ExplainParams, ExplainResult } from '../../../language/protocol/explain.ts';
import type { ReferenceParams, ReferenceResult } from '../../../language/protocol/reference.ts';
import { copyLink } from '../../../language/view/hover/copy-link.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';

const folder = path.resolve(import.meta.dirname, '../../../extension/sample');
const files = Object.fromEntries(
  ['first_try.layup', 'materials.layup', 'tools.layup', 'shop.layup'].map((name) => [
    name,
    readFileSync(path.join(folder, name), 'utf8'),
  ]),
);

let server: MemoryServer;
beforeAll(async () => {
  server = await startMemoryServer(files, { initializationOptions: { commandLinks: true } });
});
afterAll(() => server.stop());

const explain = async (params: ExplainParams): Promise<string> =>
  (await server.client.sendRequest<ExplainResult>('laybook/explain', params)).markdown;
const lineOf = (words: string): number =>
  (files['first_try.layup'] ?? '').split('\n').findIndex((line) => line.includes(words));

describe('the page of a rule', () => {
  it('is the page alone, where no case is named', async () => {
    const page = await explain({ rule: 'wrap/short' });
    expect(page).toMatch(/^# wrap\/short\n/);
    expect(page).not.toContain('## Here');
  });

  it('tells of the finding on top: the message, the line, the figures by their names', async () => {
    const line = lineOf('oversize 30 mm');
    const at = { uri: server.uriOf('first_try.layup'), position: { line, character: 0 } };
    const page = await explain({ rule: 'wrap/short', case: at });
    expect(page.indexOf('## Here')).toBeGreaterThan(page.indexOf('# wrap/short'));
    expect(page.indexOf('## Here')).toBeLessThan(page.indexOf('## What it checks'));
    expect(page).toContain(`line ${line + 1}: `);
    expect(page).toMatch(/\| needed \| [\d.]+ mm \|/);
  });

  it('is the page alone, where the rule finds nothing in the file, or there is no such file', async () => {
    for (const uri of [server.uriOf('materials.layup'), server.uriOf('none.layup')]) {
      const page = await explain({ rule: 'wrap/short', case: { uri, position: { line: 0, character: 0 } } });
      expect(page).not.toContain('## Here');
      expect(page).toMatch(/^# wrap\/short\n/);
    }
  });
});

describe('figures of a hover', () => {
  const rows = [
    ['mass', '400 g'],
    ['a) [b](c) "d"', "e'f\n*!"],
  ];

  it('are copied as they are, whatever stands in them', () => {
    const link = copyLink(rows, { commandLinks: true } as Parameters<typeof copyLink>[1]);
    const [, query = ''] = /^\[[^\]]*\]\(command:laybook\.copyText\?([\w.%~-]+)\)$/.exec(link) ?? [];
    expect(JSON.parse(decodeURIComponent(query))).toEqual([`mass\t400 g\na) [b](c) "d"\te'f *!`]);
  });

  it('have no link where the editor runs none', () => {
    expect(copyLink(rows, {} as Parameters<typeof copyLink>[1])).toBe('');
  });

  it('have one in the hover of a layer', async () => {
    const line = lineOf('ply outer');
    const hover = await server.client.sendRequest<{ contents: { value: string } }>('textDocument/hover', {
      textDocument: { uri: server.uriOf('first_try.layup') },
      position: { line, character: 9 },
    });
    expect(hover.contents.value).toContain('(command:laybook.copyText?');
  });
});

describe('the reference', () => {
  it('has its chapters, each written from the tables', async () => {
    const ask = async (params: ReferenceParams): Promise<ReferenceResult> =>
      server.client.sendRequest<ReferenceResult>('laybook/reference', params);
    const { chapters, markdown } = await ask({});
    expect(chapters.map(({ name }) => name)).toEqual(['notation', 'units', 'steps', 'materials', 'rules', 'cautions']);
    for (const { about } of chapters) expect(markdown).toContain(about);
    expect((await ask({ chapter: 'steps' })).markdown).toContain('- **perforated**');
    expect((await ask({ chapter: 'no such' })).markdown).toBe(markdown);
  });
});
