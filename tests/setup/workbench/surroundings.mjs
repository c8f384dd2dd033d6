// What an editor may have around it: a folder that nobody has trusted, several folders, files that come and go while nobody looks,
// a window that is loaded again, a server that dies.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { demand, find, runCommand, viewFrame } from './doing.mjs';
import { blockOutside, remoteUri, startServer, workbenchUrl } from './host.mjs';

const limit = { timeout: 60_000 };
const figures = /\d\sg\s·\sto\s[\d.]+\smm/;

const editorOf = (page, name) => page.locator(`.monaco-editor[data-uri$="/${name}"]`);
const hasFigures = (editor) => editor.locator('.view-line span', { hasText: figures }).first().waitFor(limit);
/** Pauses until something holds. */
async function until(what, holds) {
  for (const end = Date.now() + limit.timeout; ; await new Promise((resolve) => setTimeout(resolve, 200))) {
    if (holds()) return;
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
  }
}

const usesOwnCloth = 'recipe uses_own {\n  stack {\n    ply one own_cloth at 0 deg\n  }\n}\n';
const ownCloth = 'fabric own_cloth {\n  fibre e_glass\n  layers woven 0 deg 140 g/m2, 90 deg 140 g/m2\n}\n';

/** The process of the language server of this installation; found by the path of its program, which no other has. */
function languageServers(extensionsDir) {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((pid) => {
      try {
        const command = readFileSync(`/proc/${pid}/cmdline`, 'utf8');
        return command.includes(extensionsDir) && command.includes('dist/server.cjs');
      } catch {
        return false;
      }
    })
    .map(Number);
}

const steps = [
  {
    name: 'a folder that nobody has trusted',
    file: 'first_try.layup',
    asksTrust: true,
    settings: { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never' },
    async see({ page, editor }) {
      await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).first().waitFor(limit);
      await editor.locator('.squiggly-error').first().waitFor(limit);
      await hasFigures(editor);
    },
  },
  {
    name: 'several folders: names of one are known in the other',
    file: 'uses_own.layup',
    opens: 'both.code-workspace',
    before({ workspace }) {
      const shelf = path.join(workspace, '..', 'shelf');
      mkdirSync(shelf, { recursive: true });
      writeFileSync(path.join(shelf, 'own.layup'), ownCloth);
      writeFileSync(path.join(workspace, 'uses_own.layup'), usesOwnCloth);
      const folders = [{ path: path.basename(workspace) }, { path: 'shelf' }];
      writeFileSync(path.join(workspace, '..', 'both.code-workspace'), JSON.stringify({ folders }));
    },
    async see({ editor, workspace }) {
      // The stack has no tool: that is one mistake; a cloth that nobody knows is a second one.
      const mistakes = (count) =>
        editor
          .locator('.squiggly-error')
          .nth(count)
          .waitFor({ ...limit, state: 'detached' });
      const mistake = (count) =>
        editor
          .locator('.squiggly-error')
          .nth(count - 1)
          .waitFor(limit);
      await mistake(1);
      await mistakes(1);
      const shelf = path.join(workspace, '..', 'shelf');
      renameSync(path.join(shelf, 'own.layup'), path.join(shelf, 'own.txt'));
      await mistake(2);
      renameSync(path.join(shelf, 'own.txt'), path.join(shelf, 'other.layup'));
      await mistakes(1);
      rmSync(path.join(shelf, 'other.layup'));
      await mistake(2);
      rmSync(path.join(workspace, 'uses_own.layup'));
    },
  },
  {
    name: 'the layer card, after the window was loaded again',
    file: 'sled_deck.layup',
    async see({ page, editor, address }) {
      await find(page, editor, 'ply inner');
      await runCommand(page, 'Show Layer Card');
      await viewFrame(page)
        .locator('h1', { hasText: /^inner$/ })
        .waitFor(limit);
      // What is open is written down a moment after it was opened.
      await new Promise((resolve) => setTimeout(resolve, 3000));
      // Without the file that the first address names: an editor that is given one brings nothing else back.
      await page.goto(address);
      await viewFrame(page)
        .locator('h1', { hasText: /^inner$/ })
        .waitFor(limit);
    },
  },
  {
    name: 'the language server starts by itself when it has died',
    file: 'sled_deck.layup',
    async see({ page, editor, extensionsDir }) {
      await hasFigures(editor);
      const [first] = languageServers(extensionsDir);
      demand(first !== undefined, 'no language server runs');
      process.kill(first, 'SIGKILL');
      await until('another server', () => languageServers(extensionsDir).some((pid) => pid !== first));
      await find(page, editor, 'core body foam_80');
      await page.keyboard.press('End');
      await page.keyboard.type(', nonsense');
      await editor.locator('.squiggly-error').first().waitFor(limit);
      for (let undone = 0; undone < 3; undone++) await page.keyboard.press('Control+z');
    },
  },
];

/** One step in a window and with a server of its own. */
async function goThrough(step, { browser, extensionsDir, workspace, folder, settings }) {
  const { file, before, see, asksTrust, settings: own, opens } = step;
  before?.({ workspace });
  const server = await startServer({ extensionsDir, asksTrust, settings: { ...settings, ...own } });
  const context = await browser.newContext({ viewport: { width: 1280, height: 860 } });
  await blockOutside(context, server);
  const page = await context.newPage();
  try {
    const opened = opens === undefined ? workspace : path.join(workspace, '..', opens);
    const payload = [['openFile', remoteUri(server, path.join(workspace, file))]];
    await page.goto(workbenchUrl(server, opened, payload));
    const editor = editorOf(page, file);
    await editor.waitFor(limit);
    await see({ page, editor, workspace, extensionsDir, address: workbenchUrl(server, opened, []) });
  } finally {
    await page.screenshot({ path: path.join(folder, `surroundings-${steps.indexOf(step) + 1}.png`) });
    await context.close();
    await server.stop();
  }
}

/** Goes through the steps; returns how many were seen and how many failed. */
export async function seeSurroundings({ lookTwice, ...around }) {
  let passed = 0;
  for (const step of steps) if (await lookTwice(step.name, () => goThrough(step, around))) passed += 1;
  return { passed, failed: steps.length - passed };
}
