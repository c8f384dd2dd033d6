// Takes the pictures of the readme in the headless workbench, so that they show what there is: `npm run pictures`.
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildAll } from './build.mjs';
import { generate } from './generate.mjs';
import { packageExtension, vsix } from './package.mjs';
import { root, sample } from './paths.mjs';
import { smallPng } from './small-png.mjs';
import { task } from './task.mjs';
import { find, runCommand, viewFrame } from './workbench/doing.mjs';
import { blockOutside, installVsix, launchBrowser, remoteUri, startServer, workbenchUrl } from './workbench/host.mjs';
import { installWorkbench, whyNot } from './workbench/install.mjs';

const folder = path.join(root, 'extension/pictures');
const limit = { timeout: 60_000 };
const figures = /\d\sg\s·\sto\s[\d.]+\smm/;

const settings = {
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.activityBar.location': 'hidden',
  'workbench.statusBar.visible': false,
  'workbench.layoutControl.enabled': false,
  'window.commandCenter': false,
  'editor.minimap.enabled': false,
  'editor.fontSize': 13,
  'breadcrumbs.enabled': false,
  'problems.autoReveal': false,
};

/** What each picture shows, and how one gets there. */
const pictures = [
  {
    name: 'figures',
    file: 'sled_deck.layup',
    size: { width: 1560, height: 640 },
    async arrange({ page, editor }) {
      await editor.locator('.view-line span', { hasText: figures }).first().waitFor(limit);
      await find(page, editor, 'ply outer');
      await runCommand(page, 'Show Layer Card');
      await viewFrame(page)
        .locator('h1', { hasText: /^outer$/ })
        .waitFor(limit);
      await page.keyboard.press('Home');
    },
  },
  {
    name: 'finding',
    file: 'first_try.layup',
    size: { width: 1000, height: 420 },
    async arrange({ page, editor }) {
      await editor.locator('.squiggly-error').first().waitFor(limit);
      await find(page, editor, 'oversize 30 mm');
      await page.keyboard.press('ArrowLeft');
      await runCommand(page, 'Show or Focus Hover');
      await page.locator('.monaco-hover:visible', { hasText: 'too short' }).first().waitFor(limit);
    },
  },
  {
    name: 'rule',
    file: 'first_try.layup',
    size: { width: 1280, height: 560 },
    async arrange({ page, editor }) {
      await editor.locator('.squiggly-error').first().waitFor(limit);
      await find(page, editor, 'oversize 30 mm');
      await runCommand(page, 'Explain a Rule');
      await page.locator('.quick-input-list .monaco-list-row', { hasText: 'wrap/short' }).first().click();
      const frame = page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame');
      await frame.locator('h2', { hasText: 'Here' }).waitFor(limit);
    },
  },
  {
    name: 'expectations',
    file: 'sled_deck.layup',
    size: { width: 1000, height: 420 },
    async arrange({ page, editor }) {
      await editor.locator('.view-line span', { hasText: figures }).first().waitFor(limit);
      await runCommand(page, 'Testing: Focus on Test Explorer View');
      const rows = page.locator('.test-explorer .monaco-list-row');
      const deck = rows.filter({ hasText: /^sled_deck(?! size)/ }).first();
      await deck.waitFor(limit);
      await deck.click();
      await page.keyboard.press('ArrowRight');
      await rows
        .filter({ hasText: /^mass <= 2.3 kg/ })
        .first()
        .waitFor(limit);
    },
  },
  {
    name: 'compare',
    file: 'sled_deck.layup',
    size: { width: 1100, height: 560 },
    async arrange({ page, editor }) {
      await find(page, editor, 'foam_80');
      // The pointer rests where it calls nothing up.
      await page.mouse.move(700, 540);
      await runCommand(page, 'Compare Materials');
      await page
        .locator('.quick-input-list .monaco-list-row')
        .filter({ hasText: /mass [+\u2212]\d/ })
        .first()
        .waitFor(limit);
    },
  },
];

/** One window for each picture; `into` is the folder that they go to. */
export async function takePictures(chosen, into, { extensionsDir, workspace }, more = {}) {
  mkdirSync(into, { recursive: true });
  const browser = await launchBrowser();
  const server = await startServer({ extensionsDir, settings: { ...settings, ...more } });
  try {
    for (const { name, file, size, arrange } of chosen) {
      const context = await browser.newContext({ viewport: size });
      await blockOutside(context, server);
      const page = await context.newPage();
      try {
        const payload = file === undefined ? [] : [['openFile', remoteUri(server, path.join(workspace, file))]];
        await page.goto(workbenchUrl(server, workspace, payload));
        await page.locator('.monaco-workbench').waitFor(limit);
        if (file !== undefined) await page.keyboard.press('Control+b');
        await arrange({ page, editor: page.locator(`.monaco-editor[data-uri$="/${file}"]`) });
        // What fades and slides comes to rest.
        await page.waitForTimeout(1500);
      } finally {
        const bytes = await page.screenshot({ animations: 'disabled' });
        writeFileSync(path.join(into, `${name}.png`), await smallPng(bytes));
        await context.close();
      }
    }
  } finally {
    await browser.close();
    await server.stop();
  }
}

/** A copy of the sample workshop and an installation of the package, in a folder of their own. */
export async function withInstallation(use) {
  const work = mkdtempSync(path.join(tmpdir(), 'laybook-pictures-'));
  try {
    const place = { extensionsDir: path.join(work, 'extensions'), workspace: path.join(work, 'sample') };
    installVsix(vsix, place.extensionsDir);
    cpSync(sample, place.workspace, { recursive: true });
    return await use(place);
  } finally {
    rmSync(work, { recursive: true, force: true, maxRetries: 5 });
  }
}

await task(import.meta.filename, async () => {
  const reason = whyNot();
  if (reason !== undefined) throw new Error(`The pictures cannot be taken here: ${reason}`);
  installWorkbench();
  generate();
  await buildAll();
  packageExtension();
  await withInstallation((place) => takePictures(pictures, folder, place));
});
