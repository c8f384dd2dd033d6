import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { startServer } from '../harness/server.ts';

/** Nothing leaves the machine, and nothing that a workspace or a setting names is run. */
const root = path.resolve(import.meta.dirname, '../..');
const sample = path.join(root, 'extension/sample');
const before = pathToFileURL(path.join(root, 'tests/harness/no-way-out.mjs')).href;

it('the stub refuses: a program that fetches is found out', () => {
  const { stderr } = spawnSync(process.execPath, ['--import', before, '--eval', 'fetch("http://127.0.0.1:9")'], {
    encoding: 'utf8',
  });
  expect(stderr).toContain('reached for fetch');
});

it('the terminal opens no connection and starts no program', () => {
  for (const args of [
    ['check', sample],
    ['report', 'sled_deck', sample],
  ]) {
    const { stderr, status } = spawnSync(
      process.execPath,
      ['--import', before, path.join(root, 'language/terminal/main.ts'), ...args],
      { encoding: 'utf8' },
    );
    expect(stderr).not.toContain('reached for');
    expect([0, 1]).toContain(status);
  }
}, 60_000);

it('neither does the server', async () => {
  const server = await startServer({ before, folders: [{ uri: pathToFileURL(sample).href, name: 'sample' }] });
  const uri = pathToFileURL(path.join(sample, 'first_try.layup')).href;
  const told = server.nextDiagnostics(uri);
  await server.connection.sendNotification('textDocument/didOpen', {
    textDocument: {
      uri,
      languageId: 'layup',
      version: 1,
      text: readFileSync(path.join(sample, 'first_try.layup'), 'utf8'),
    },
  });
  expect((await told).length).toBeGreaterThan(30);
  await server.connection.sendRequest('textDocument/hover', {
    textDocument: { uri },
    position: { line: 28, character: 10 },
  });
  await server.stop();
  expect(server.log.join('\n')).not.toContain('reached for');
}, 60_000);

it('no setting names a program or an address; a file, only a font, and not where nobody trusts the workspace', () => {
  const { contributes, capabilities } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  for (const [name, setting] of Object.entries<{ type: string; enum?: unknown }>(
    contributes.configuration.properties,
  )) {
    expect(name).not.toMatch(/path|command|executable|url|server/i);
    if (['boolean', 'object', 'number'].includes(setting.type) || setting.enum !== undefined) continue;
    expect(name).toBe('laybook.sheet.font');
    expect(capabilities.untrustedWorkspaces.restrictedConfigurations).toContain(name);
  }
});
