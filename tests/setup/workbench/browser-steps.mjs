// The extension in an editor that is nothing but a page of a browser: what works there as anywhere else, and what says that it
// cannot.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { browserUrl, withoutRemote } from './browser-host.mjs';
import { find, named, readable, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

const squiggles = (editor) => editor.locator('.squiggly-error, .squiggly-warning').first().waitFor(limit);
const hint = (editor, words) => editor.locator('.view-line span', { hasText: words }).first().waitFor(limit);
const line = (editor, words) => editor.locator('.view-line', { hasText: words }).first();

/** Each is seen in one and the same window, in this order. */
const steps = [
  {
    name: 'findings, figures beside the lines and above the recipe',
    async see({ editor }) {
      await squiggles(editor);
      await hint(editor, /\d\sg\s·\sto\s[\d.]+\smm/);
      await editor
        .locator('.codelens-decoration', { hasText: /mass\s[\d.]+\skg/ })
        .first()
        .waitFor(limit);
    },
  },
  {
    name: 'completion',
    async see({ page, editor }) {
      await find(page, editor, 'core body foam_80');
      await page.keyboard.press('Home');
      await page.keyboard.type('ply extra ');
      await page.keyboard.press('Control+Space');
      await page.locator('.suggest-widget:visible .monaco-list-row', { hasText: 'triax_680' }).first().waitFor(limit);
      await page.keyboard.press('Escape');
      for (let undone = 0; undone < 4; undone++) await page.keyboard.press('Control+z');
      await line(editor, /^\s*core/).waitFor(limit);
    },
  },
  {
    name: 'hover',
    async see({ page, editor }) {
      await find(page, editor, 'foam_80 20 mm');
      await runCommand(page, 'Show or Focus Hover');
      await page.locator('.monaco-hover:visible', { hasText: /\d/ }).first().waitFor(limit);
      await page.keyboard.press('Escape');
    },
  },
  {
    name: 'the page of a rule',
    async see({ page, editor }) {
      await line(editor, 'recipe first_board').click();
      await runCommand(page, 'Explain a Rule');
      const input = page.locator('.quick-input-widget:visible input').first();
      await input.fill('wrap/short');
      await page.keyboard.press('Enter');
      const tab = page.locator('.tab', { hasText: /short\.md/ }).first();
      await tab.waitFor(limit);
      await page.keyboard.press('Control+w');
    },
  },
  {
    name: 'rename and format',
    async see({ page, editor }) {
      await find(page, editor, 'kitchen_table "The old');
      await page.keyboard.press('ArrowLeft');
      await page.keyboard.press('F2');
      const box = page.locator('.rename-box input:visible');
      await box.waitFor(limit);
      await box.fill('oak_table');
      await page.keyboard.press('Enter');
      await line(editor, 'stack from tool oak_table').waitFor(limit);
      await line(editor, 'tool oak_table "The old').click();
      await page.keyboard.press('End');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Home');
      await page.keyboard.type('      ');
      await line(editor, /^\s{8}flat/).waitFor(limit);
      await runCommand(page, 'Format Document');
      await line(editor, /^\s{2}flat/).waitFor(limit);
    },
  },
  {
    name: 'expect lines in the Testing view',
    async see({ page }) {
      await page.locator('.activitybar [aria-label^="Testing"]').first().click();
      const rows = page.locator('.test-explorer .monaco-list-row');
      await rows.filter({ hasText: 'sled_deck' }).first().waitFor(limit);
      await page.locator('.activitybar [aria-label^="Explorer"]').first().click();
    },
  },
  {
    name: 'the sample is copied into the folder that is open',
    async see({ page }) {
      await runCommand(page, 'Open the Sample Workshop');
      const copy = page.locator('.monaco-editor[data-uri$="/hollow-tarn-workshop/sled_deck.layup"]');
      await copy.waitFor(limit);
      await hint(copy, /\d\sg\s·\sto\s[\d.]+\smm/);
    },
  },
  {
    name: 'the layer card',
    async see({ page }) {
      const copy = page.locator('.monaco-editor[data-uri$="/hollow-tarn-workshop/sled_deck.layup"]');
      await find(page, copy, 'ply outer');
      await runCommand(page, 'Show Layer Card');
      const card = viewFrame(page);
      await card.locator('h1', { hasText: /^outer$/ }).waitFor(limit);
      await readable(card);
      await named(card);
    },
  },
  {
    name: 'the plan',
    async see({ page }) {
      const copy = page.locator('.monaco-editor[data-uri$="/hollow-tarn-workshop/sled_deck.layup"]');
      await find(page, copy, 'patch pad');
      await runCommand(page, 'Show Plan');
      const plan = viewFrame(page);
      await plan.locator('.thing.chosen[data-thing="cloth stack.4 pad"]').first().waitFor(limit);
      await readable(plan);
    },
  },
  {
    name: 'without a folder the sample has nowhere to go, and says so',
    alone: true,
    async see({ page }) {
      await runCommand(page, 'Open the Sample Workshop');
      // A workbench under test shows no message by itself.
      await page.locator('[id="status.notifications"]').click();
      await page.locator('.notification-list-item', { hasText: 'A browser has no disk' }).first().waitFor(limit);
    },
  },
];

/** Goes through steps in one window, to the end of them even where one fails. */
async function goThrough(chosen, { browser, server, installed, folder, settings, alone }) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 860 } });
  await withoutRemote(context, server, installed, settings);
  const page = await context.newPage();
  const failed = [];
  try {
    await page.goto(browserUrl(server, alone ? undefined : 'first_try.layup'));
    await page.locator('.monaco-workbench').waitFor(limit);
    const editor = page.locator('.monaco-editor[data-uri$="/sample/first_try.layup"]');
    for (const step of chosen) {
      try {
        await step.see({ page, editor });
      } catch (error) {
        failed.push(`${step.name}: ${error instanceof Error ? error.message : error}`);
        await page.screenshot({ path: path.join(folder, `browser-alone-failed-${failed.length}.png`) });
        await page.keyboard.press('Escape');
      }
    }
  } finally {
    await page.screenshot({ path: path.join(folder, `browser-alone${alone ? '-no-folder' : ''}.png`) });
    await context.close();
  }
  if (failed.length > 0) throw new Error(failed.join('\n'));
}

/** All steps in an editor with a folder and in one without; returns how many were seen and how many failed. */
export async function seeInBrowser({ lookTwice, extensionsDir, ...around }) {
  const [name] = readdirSync(extensionsDir).filter((each) => each.startsWith('laybook.laybook-'));
  const installed = path.join(extensionsDir, name);
  let passed = 0;
  for (const alone of [false, true]) {
    const chosen = steps.filter((step) => (step.alone ?? false) === alone);
    const names = `in a browser alone: ${chosen.map((step) => step.name).join('; ')}`;
    if (await lookTwice(names, () => goThrough(chosen, { ...around, installed, alone }))) passed += chosen.length;
  }
  return { passed, failed: steps.length - passed };
}
