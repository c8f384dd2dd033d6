/** A server in a web worker that dies or hangs is noticed, started again, and not given a third time what has brought it down twice. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { workerBundle } from '../harness/worker-server.ts';
import { launchBrowser } from '../setup/workbench/host.mjs';

const origin = 'http://laybook.test';
const deadly = 'recipe deadly {\n  bring it down\n}\n';
const harmless = 'recipe harmless {\n  no such line\n}\n';

/** The server itself, but for what it does of one text, unless it was told to leave one alone. */
const broughtDown = (how: string): string => `
  importScripts('/server-browser.js');
  const take = self.onmessage;
  let warned = false;
  self.onmessage = (event) => {
    const { method, params } = event.data;
    if (method === 'initialize') warned = params.initializationOptions.leftAlone.length > 0;
    if (method === 'textDocument/didOpen' && params.textDocument.text.includes('bring it down') && !warned) { ${how} }
    take.call(self, event);
  };`;

let browser: Browser;
let script: string;
let page: Page;

beforeAll(async () => {
  if (!existsSync(workerBundle)) throw new Error(`${workerBundle} has not been built: npm run build`);
  const built = await build({
    entryPoints: [path.join(import.meta.dirname, 'dying-page.ts')],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    globalName: 'dying',
    // the wire alone, without the editor that the client is made for
    alias: { 'vscode-languageclient/browser': 'vscode-languageserver-protocol/browser' },
  });
  script = built.outputFiles[0]?.text ?? '';
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

beforeEach(async () => {
  page = await browser.newPage();
  const files: Readonly<Record<string, string>> = {
    '/server-browser.js': readFileSync(workerBundle, 'utf8'),
    '/loops.js': broughtDown('for (;;);'),
    // A fault before the server listens: nothing of it keeps it to itself.
    '/throws.js': `throw new Error('out of memory');`,
    '/page.js': script,
  };
  await page.route(`${origin}/**`, (route) => {
    const name = new URL(route.request().url()).pathname;
    if (name === '/') return route.fulfill({ contentType: 'text/html', body: '<script src="/page.js"></script>' });
    const body = files[name];
    return body === undefined
      ? route.fulfill({ status: 404 })
      : route.fulfill({ contentType: 'text/javascript', body });
  });
  await page.goto(origin);
});

interface Seen {
  readonly deaths: readonly string[];
  readonly told: readonly string[];
  readonly starts: number;
}
const seen = (): Promise<Seen> => page.evaluate('dying.seen');
const run = (program: string, text: string, limitMs: number): Promise<unknown> =>
  page.evaluate(`dying.run(${JSON.stringify(program)}, ${JSON.stringify(text)}, ${limitMs})`);

describe('a server in a web worker', () => {
  it('that loops without end is ended; the text that did it twice is left alone, and that is told', async () => {
    await run('/loops.js', deadly, 2000);
    const twice = 'this text has brought the checker down twice: it is not read again until it is changed';
    await expect.poll(async () => (await seen()).told, { timeout: 40_000 }).toEqual([twice]);
    const { starts, deaths } = await seen();
    expect(starts).toBe(3);
    expect(deaths).toEqual(['it does not answer any more', 'it does not answer any more']);
  });

  it('that is well is asked again and again, and never ended', async () => {
    await run('/loops.js', harmless, 4000);
    await expect.poll(async () => (await seen()).told.length).toBeGreaterThan(0);
    await new Promise((resolve) => setTimeout(resolve, 6000));
    expect(await seen()).toMatchObject({ starts: 1, deaths: [] });
  });

  it('that fails at its start is noticed at once', async () => {
    await run('/throws.js', harmless, 60_000);
    await expect.poll(async () => (await seen()).starts).toBe(5);
    expect((await seen()).deaths[0]).toMatch(/out of memory/);
  });

  it('that is not there is noticed at once', async () => {
    await run('/none.js', harmless, 60_000);
    await expect.poll(async () => (await seen()).deaths.length).toBe(5);
    expect((await seen()).deaths[0]).toBe('it could not be started');
  });

  it('of which a message cannot be read is ended', async () => {
    await page.evaluate(`dying.unreadable('/server-browser.js')`);
    await expect.poll(async () => (await seen()).deaths).toEqual(['a message of it could not be read']);
  });
});
