import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Location, type LocationLink, TextDocument, type WorkspaceEdit } from 'vscode-languageserver/node';
import { startServer, type TestServer } from '../harness/server.ts';

const files: Readonly<Record<string, string>> = {
  'shop.layup': 'fabric cloth {\n  fibre e_glass\n}\n',
  'a.layup':
    'recipe a {\n  part {\n    outline file "a.svg"\n  }\n  stack {\n    ply p cloth\n    ply q csm_300\n  }\n}\n',
  'folder/b.layup': 'recipe b like a {\n  change p, darts 4\n}\n',
};

let folder: string;
let server: TestServer;
const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).href;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'layup-'));
  mkdirSync(path.join(folder, 'folder'));
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
  server = await startServer({
    folders: [{ uri: pathToFileURL(folder).href, name: 'workshop' }],
    capabilities: { workspace: { configuration: true, workspaceFolders: true } },
    settings: { units: 'si' },
  });
});

afterEach(async () => {
  // A server that a test has stopped already is gone.
  if (server.process.exitCode === null) expect(await server.stop()).toBe(0);
  rmSync(folder, { recursive: true, force: true });
});

const open = (name: string, text = files[name]) =>
  server.connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri: uriOf(name), languageId: 'layup', version: 1, text },
  });

/** The position of words in a file. */
function at(name: string, words: string) {
  const document = TextDocument.create(uriOf(name), 'layup', 1, files[name] ?? '');
  return { textDocument: { uri: uriOf(name) }, position: document.positionAt(document.getText().indexOf(words)) };
}

it('answers over standard input and output, from the first request to the exit', async () => {
  const { capabilities } = server.initialized;
  expect(capabilities).toMatchObject({
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
  });
  expect(capabilities.renameProvider).toEqual({ prepareProvider: true });

  const reported = server.nextDiagnostics(uriOf('a.layup'));
  await open('a.layup');
  expect(await reported).toBeInstanceOf(Array);

  const definition = await server.connection.sendRequest<LocationLink[] | Location[]>(
    'textDocument/definition',
    at('a.layup', 'cloth'),
  );
  expect(JSON.stringify(definition)).toContain(uriOf('shop.layup'));

  const stock = await server.connection.sendRequest<Location[]>('textDocument/definition', at('a.layup', 'csm_300'));
  expect(JSON.stringify(stock)).toContain('layup-stock:/fabrics-glass.layup');
  const shown = await server.connection.sendRequest<{ text?: string }>('laybook/stockText', {
    uri: 'layup-stock:/fabrics-glass.layup',
  });
  expect(shown.text).toContain('fabric csm_300');
  expect(await server.connection.sendRequest('laybook/stockText', { uri: 'file:///etc/passwd' })).toEqual({});

  const edit = await server.connection.sendRequest<WorkspaceEdit>('textDocument/rename', {
    ...at('a.layup', 'p cloth'),
    newName: 'outer',
  });
  expect(Object.keys(edit.changes ?? {}).sort()).toEqual([uriOf('a.layup'), uriOf('folder/b.layup')].sort());
  const refused = server.connection.sendRequest('textDocument/rename', { ...at('a.layup', 'csm_300'), newName: 'x' });
  await expect(refused).rejects.toThrow(/stock library, which is read only/);

  expect(await server.stop()).toBe(0);
  expect(server.log.filter((line) => !/ExperimentalWarning|node --trace-warnings/.test(line))).toEqual([]);
});

it('looks at a recipe again when a drawing that it names changes', async () => {
  const first = server.nextDiagnostics(uriOf('a.layup'));
  await open('a.layup');
  await first;
  const again = server.nextDiagnostics(uriOf('a.layup'));
  await server.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: uriOf('a.svg'), type: 2 }],
  });
  expect(await again).toBeInstanceOf(Array);
});

it('takes the file again when an editor is closed without saving', async () => {
  const first = server.nextDiagnostics(uriOf('shop.layup'));
  await open('shop.layup', 'fabric other {\n}\n');
  await first;
  const gone = await server.connection.sendRequest('textDocument/definition', at('a.layup', 'cloth'));
  expect(gone).toBe(null);
  const again = server.nextDiagnostics(uriOf('a.layup'));
  await server.connection.sendNotification('textDocument/didClose', { textDocument: { uri: uriOf('shop.layup') } });
  await again;
  expect(
    JSON.stringify(await server.connection.sendRequest('textDocument/definition', at('a.layup', 'cloth'))),
  ).toContain('shop.layup');
});

it('reports on every document again when a setting changes, and only then', async () => {
  const first = server.nextDiagnostics(uriOf('a.layup'));
  await open('a.layup');
  await first;
  const again = [server.nextDiagnostics(uriOf('a.layup')), server.nextDiagnostics(uriOf('folder/b.layup'))];
  await server.connection.sendNotification('workspace/didChangeConfiguration', {
    settings: { laybook: { units: 'us', severities: { 'wrap/short': 'warning' } } },
  });
  expect(await Promise.all(again)).toHaveLength(2);
});

it('forgets a folder that was deleted, and follows one that was added', async () => {
  const more = mkdtempSync(path.join(tmpdir(), 'layup-more-'));
  writeFileSync(path.join(more, 'c.layup'), 'recipe c like a {\n}\n');
  const added = server.nextDiagnostics(pathToFileURL(path.join(more, 'c.layup')).href);
  await server.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
    event: { added: [{ uri: pathToFileURL(more).href, name: 'more' }], removed: [] },
  });
  await added;
  const places = async (): Promise<string[]> => {
    const found = await server.connection.sendRequest<Location[]>('textDocument/references', {
      ...at('a.layup', 'a {'),
      context: { includeDeclaration: false },
    });
    return found.map(({ uri }) => path.basename(uri)).sort();
  };
  expect(await places()).toEqual(['b.layup', 'c.layup']);
  const gone = server.nextDiagnostics(uriOf('folder/b.layup'));
  await server.connection.sendNotification('workspace/didDeleteFiles', { files: [{ uri: uriOf('folder') }] });
  await gone;
  expect(await places()).toEqual(['c.layup']);
  rmSync(more, { recursive: true, force: true });
});
