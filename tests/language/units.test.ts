/** One setting for units and the language of the editor for numbers: in every view, and in no output for machines. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Hover, InlayHint } from 'vscode-languageserver-protocol';
import { type ReportResult, reportRequest } from '../../language/protocol/report.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

const file = 'deck.layup';
/** Too little film for the corners, so that a finding tells lengths. */
const text = (sampleFiles['sled_deck.layup'] ?? '')
  .replace(/pleats 4 of 40 mm, accept .*/, 'pleats 1 of 12.5 mm')
  .replaceAll('sled_deck', 'deck');
const files = { ...sampleFiles, [file]: text };

const positionOf = (words: string, within = 0): { line: number; character: number } => {
  const before = text.slice(0, text.indexOf(words) + within);
  return { line: before.split('\n').length - 1, character: before.length - before.lastIndexOf('\n') - 1 };
};

/** What each view tells, as text. */
async function viewsOf(server: MemoryServer): Promise<Readonly<Record<string, string>>> {
  await server.settled();
  const textDocument = { uri: server.uriOf(file) };
  const hints: readonly InlayHint[] = await server.client.sendRequest('textDocument/inlayHint', {
    textDocument,
    range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
  });
  const lenses: readonly { command: { title: string } }[] = await server.client.sendRequest('textDocument/codeLens', {
    textDocument,
  });
  const hover = await server.client.sendRequest<Hover | null>('textDocument/hover', {
    textDocument,
    position: positionOf('core body', 6),
  });
  const report = await server.client.sendRequest<ReportResult>(reportRequest, { ...textDocument, recipe: 'deck' });
  const parts = hints.flatMap(({ label }) => (typeof label === 'string' ? [] : label));
  return {
    diagnostics: (server.diagnostics.get(file) ?? []).map(({ message }) => message).join('\n'),
    hover: (hover?.contents as { value: string } | undefined)?.value ?? '',
    hints: parts.map(({ value }) => value).join('\n'),
    tooltips: parts.map(({ tooltip }) => (typeof tooltip === 'object' ? tooltip.value : '')).join('\n'),
    lens: lenses.map(({ command }) => command.title).join('\n'),
    report: report.markdown,
  };
}

const servers: MemoryServer[] = [];
async function serve(locale?: string): Promise<MemoryServer> {
  const server = await startMemoryServer(files, locale === undefined ? {} : { initializationOptions: { locale } });
  servers.push(server);
  await server.open(file, text);
  return server;
}
afterAll(() => {
  for (const server of servers) server.stop();
});

describe('units', () => {
  const told: Record<string, Readonly<Record<string, string>>> = {};
  beforeAll(async () => {
    const server = await serve();
    for (const units of ['si', 'us', 'both']) {
      await server.client.sendNotification('workspace/didChangeConfiguration', { settings: { laybook: { units } } });
      told[units] = await viewsOf(server);
    }
  });

  const si = /\d (mm|g|kg)\b/;
  const us = /\d\.\d+ (in|oz av|lb|mil)\b/;

  it.each(['diagnostics', 'hover', 'hints', 'tooltips', 'lens', 'report'])('one setting switches %s', (view) => {
    expect(told.si?.[view]).toMatch(si);
    expect(told.si?.[view]).not.toMatch(us);
    expect(told.us?.[view]).toMatch(us);
    expect(told.both?.[view]).toMatch(/\d (mm|g|kg) \([\d.]+ (in|oz av|lb|mil)\)/);
  });

  it.each(['hints', 'lens'])('leave no other system in %s', (view) => {
    expect(told.us?.[view]).not.toMatch(si);
  });
});

describe('numbers', () => {
  it('are written as in the language of the editor, in every view', async () => {
    const [german, plain] = [await viewsOf(await serve('de')), await viewsOf(await serve())];
    for (const [view, words] of Object.entries(german)) {
      expect([view, plain[view]]).toEqual([view, expect.stringMatching(/\d\.\d/)]);
      expect([view, words]).toEqual([view, expect.stringMatching(/\d,\d+ (mm|g|kg)\b/)]);
    }
    expect(german.lens).toMatch(/mass 2,\d+ kg/);
    expect(german.hints).not.toMatch(/\d\.\d/);
  });

  it('are written as in the notation where the editor says no language, or one that there is not', async () => {
    const [odd, plain] = [await viewsOf(await serve('not a language')), await viewsOf(await serve())];
    expect(odd).toEqual(plain);
  });
});

describe('the terminal', () => {
  const made = folderOf(files);
  afterAll(() => made.dispose());
  const report = (...args: string[]) => laybook(made.folder, 'report', 'deck', ...args);

  it('tells text and Markdown in the units that are asked for', async () => {
    for (const format of ['text', 'markdown']) {
      const [si, us, both] = await Promise.all(
        ['si', 'us', 'both'].map((units) => report('--format', format, '--units', units)),
      );
      expect((await report('--format', format)).out).toBe(si?.out);
      expect(si?.out).toMatch(/2\.\d+ kg/);
      expect(us?.out).toMatch(/4\.\d+ lb/);
      expect(both?.out).toMatch(/2\.\d+ kg \(4\.\d+ lb\)/);
    }
  });

  it('refuses units for what machines read, and units that there are not', async () => {
    const json = await report('--format', 'json', '--units', 'us');
    expect([json.code, json.out]).toEqual([2, '']);
    expect(json.err).toContain('always SI');
    expect((await report('--units', 'metric')).code).toBe(2);
  });
});
