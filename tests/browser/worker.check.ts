/** The web worker server in a real browser says what the server on Node says, of the whole sample workshop. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FileChangeType, TextDocument } from 'vscode-languageserver/node';
import type { Conversation } from '../harness/converse.ts';
import { startServer, type TestServer } from '../harness/server.ts';
import { startWorkerServer, type WorkerServer } from '../harness/worker-server.ts';
import { sample } from '../setup/paths.mjs';
import { launchBrowser } from '../setup/workbench/host.mjs';

/** Where the workshop lies for the worker: on no disk. */
const virtual = 'workshop:/sample';
const names = (readdirSync(sample, { recursive: true }) as string[]).filter((name) => name.endsWith('.layup')).sort();
const textOf = (name: string): string => readFileSync(path.join(sample, name), 'utf8');

/** One of the two servers, and where its workshop lies. */
interface Side {
  readonly server: Conversation;
  readonly folder: string;
}

let disk: string;
let browser: Browser;
let node: Side & { readonly server: TestServer };
let worker: Side & { readonly server: WorkerServer };

const capabilities = {
  workspace: { configuration: true, workspaceFolders: true, codeLens: { refreshSupport: true } },
  textDocument: { hover: { contentFormat: ['markdown' as const] } },
};

beforeAll(async () => {
  const work = mkdtempSync(path.join(tmpdir(), 'laybook-worker-'));
  disk = path.join(work, 'sample');
  cpSync(sample, disk, { recursive: true });
  browser = await launchBrowser();
  const files = Object.fromEntries(names.map((name) => [`${virtual}/${name}`, textOf(name)]));
  const folders = (uri: string) => [{ uri, name: 'sample' }];
  const diskUri = pathToFileURL(disk).href;
  node = { folder: diskUri, server: await startServer({ folders: folders(diskUri), capabilities }) };
  worker = {
    folder: virtual,
    server: await startWorkerServer(await browser.newPage(), files, { folders: folders(virtual), capabilities }),
  };
  for (const { server, folder } of [node, worker]) {
    for (const name of names) {
      const textDocument = { uri: `${folder}/${name}`, languageId: 'layup', version: 1, text: textOf(name) };
      await server.connection.sendNotification('textDocument/didOpen', { textDocument });
    }
  }
}, 60_000);

afterAll(async () => {
  await node?.server.stop();
  await worker?.server.stop();
  await browser?.close();
  rmSync(path.dirname(disk), { recursive: true, force: true });
});

/** The same for both sides: the folder left out of every address. */
const plain = ({ folder }: Side, answer: unknown): unknown =>
  JSON.parse(
    JSON.stringify(answer ?? null)
      .replaceAll(folder, '')
      .replaceAll(encodeURIComponent(folder), ''),
  );

const ask = async (side: Side, method: string, params: (uri: string) => unknown, name: string): Promise<unknown> =>
  plain(side, await side.server.connection.sendRequest(method, params(`${side.folder}/${name}`)));

/** What the worker answers, having compared it with the answer of the other. */
async function same(method: string, name: string, params: (uri: string) => unknown): Promise<unknown> {
  const answer = await ask(worker, method, params, name);
  expect(answer).toEqual(await ask(node, method, params, name));
  return answer;
}

const document = (name: string): TextDocument => TextDocument.create(name, 'layup', 1, textOf(name));

/** The place of the first match of a pattern in a file. */
const at = (name: string, pattern: RegExp) => {
  const text = document(name);
  const found = pattern.exec(text.getText());
  if (found === null) throw new Error(`${name} has no ${pattern}`);
  return text.positionAt(found.index + found[0].length);
};
const placeIn = (name: string, pattern: RegExp) => (uri: string) => ({
  textDocument: { uri },
  position: at(name, pattern),
});
const whole = (name: string) => ({ start: { line: 0, character: 0 }, end: document(name).positionAt(1e9) });

describe('the server in a web worker', () => {
  it('can do all that the server on Node can', () => {
    expect(worker.server.initialized).toEqual(node.server.initialized);
  });

  it('finds the same in every file, with the same words and ranges', async () => {
    const told = (side: Side) =>
      names.map((name) => [name, plain(side, side.server.diagnostics.get(`${side.folder}/${name}`) ?? 'nothing yet')]);
    // both must have told of every file before they are compared
    for (const side of [node, worker]) {
      const silent = () => told(side).filter(([, found]) => found === 'nothing yet');
      await expect.poll(silent, { timeout: 50_000 }).toEqual([]);
    }
    await expect.poll(() => told(worker), { timeout: 5_000 }).toEqual(told(node));
    const rules = worker.server.diagnostics.get(`${virtual}/first_try.layup`)?.map(({ code }) => code);
    expect(rules).toContain('wrap/short');
  });

  it('hovers over layers, materials and steps', async () => {
    for (const pattern of [/\n *ply \w/, /\n *ply \w+ \w/, /\n *infuse/, /\n *vacuum/]) {
      const answer = await same('textDocument/hover', 'sled_deck.layup', placeIn('sled_deck.layup', pattern));
      expect(JSON.stringify(answer)).toMatch(/\d/);
    }
  });

  it('completes words and the names of other files', async () => {
    const answer = await same('textDocument/completion', 'sled_deck.layup', placeIn('sled_deck.layup', /\n *ply \w+ /));
    expect(JSON.stringify(answer)).toContain('biax_440');
  });

  it('shows figures beside the lines and above the recipe', async () => {
    const name = 'sled_deck.layup';
    const hints = await same('textDocument/inlayHint', name, (uri) => ({ textDocument: { uri }, range: whole(name) }));
    const lenses = await same('textDocument/codeLens', name, (uri) => ({ textDocument: { uri } }));
    expect(JSON.stringify(hints)).toMatch(/\d/);
    expect(JSON.stringify(lenses)).toMatch(/\d/);
  });

  it('formats a file, and renames a material in all of them', async () => {
    const name = 'first_try.layup';
    const options = { tabSize: 2, insertSpaces: true };
    await same('textDocument/formatting', name, (uri) => ({ textDocument: { uri }, options }));
    const renamed = (await same('textDocument/rename', 'sled_deck.layup', (uri) => ({
      ...placeIn('sled_deck.layup', /\n *ply \w+ \w/)(uri),
      newName: 'cloth_renamed',
    }))) as { changes?: object; documentChanges?: readonly unknown[] };
    const touched = renamed.documentChanges?.length ?? Object.keys(renamed.changes ?? {}).length;
    expect(touched).toBeGreaterThan(1);
  });

  it('goes to definitions, lists symbols, colours and folds', async () => {
    const name = 'sled_deck.layup';
    const place = placeIn(name, /\n *ply \w+ \w/);
    const symbols = await same('textDocument/documentSymbol', name, (uri) => ({ textDocument: { uri } }));
    expect(JSON.stringify(symbols)).toContain('sled_deck');
    expect(await same('textDocument/definition', name, place)).not.toEqual([]);
    await same('textDocument/references', name, (uri) => ({ ...place(uri), context: { includeDeclaration: true } }));
    await same('textDocument/semanticTokens/full', name, (uri) => ({ textDocument: { uri } }));
    await same('textDocument/foldingRange', name, (uri) => ({ textDocument: { uri } }));
  });

  it('offers quick fixes of what it found', async () => {
    const name = 'first_try.layup';
    const fixes = (side: Side) => {
      const uri = `${side.folder}/${name}`;
      const diagnostics = side.server.diagnostics.get(uri)?.filter(({ code }) => code === 'wrap/short') ?? [];
      const params = { textDocument: { uri }, range: diagnostics[0]?.range ?? whole(name), context: { diagnostics } };
      return side.server.connection
        .sendRequest('textDocument/codeAction', params)
        .then((answer) => plain(side, answer));
    };
    const found = await fixes(worker);
    expect(found).toEqual(await fixes(node));
    expect(JSON.stringify(found)).toContain('quickfix');
  });

  it('answers the requests of our own: reports, pages of rules, the stock library', async () => {
    const name = 'sled_deck.layup';
    const report = await same('laybook/report', name, (uri) => ({ uri, recipe: 'sled_deck' }));
    expect(JSON.stringify(report)).toMatch(/kg/);
    const page = await same('laybook/explain', name, () => ({ rule: 'wrap/short' }));
    expect(JSON.stringify(page)).toContain('# wrap/short');
  });

  it('asked the editor for the files of its folder, and for nothing else', () => {
    expect(worker.server.asked.size).toBeGreaterThan(1);
    expect([...worker.server.asked].filter((uri) => uri !== virtual && !uri.startsWith(`${virtual}/`))).toEqual([]);
  });

  it('follows files that come, change and go outside of the editor, and folders that come and go', async () => {
    const { connection, files, diagnostics } = worker.server;
    const recipe = `${virtual}/uses.layup`;
    const tell = (uri: string, type: FileChangeType) =>
      connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type }] });
    const unknown = () => diagnostics.get(recipe)?.some(({ message }) => String(message).includes('own_cloth'));
    const text = 'recipe uses {\n  stack {\n    ply one own_cloth at 0 deg\n  }\n}\n';
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: recipe, languageId: 'layup', version: 1, text },
    });
    await expect.poll(unknown).toBe(true);

    files.set(`${virtual}/own.layup`, 'fabric own_cloth {\n  fibre e_glass\n  areal_mass 300 g/m2\n}\n');
    await tell(`${virtual}/own.layup`, FileChangeType.Created);
    await expect.poll(unknown).toBe(false);
    // Renamed outside: gone under the one name, there under another.
    files.set(`${virtual}/shelf/other.layup`, files.get(`${virtual}/own.layup`) ?? '');
    files.delete(`${virtual}/own.layup`);
    await tell(`${virtual}/own.layup`, FileChangeType.Deleted);
    await tell(`${virtual}/shelf/other.layup`, FileChangeType.Created);
    await expect.poll(unknown).toBe(false);
    files.delete(`${virtual}/shelf/other.layup`);
    await tell(`${virtual}/shelf/other.layup`, FileChangeType.Deleted);
    await expect.poll(unknown).toBe(true);

    const second = { uri: 'elsewhere:/shelf', name: 'shelf' };
    files.set(`${second.uri}/own.layup`, 'fabric own_cloth {\n  fibre e_glass\n  areal_mass 300 g/m2\n}\n');
    const folders = (added: unknown[], removed: unknown[]) =>
      connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added, removed } });
    await folders([second], []);
    await expect.poll(unknown).toBe(false);
    await folders([], [second]);
    await expect.poll(unknown).toBe(true);
  });

  it('logged no fault', () => {
    expect(worker.server.log).toEqual([]);
  });
});
