// The Testing view with the expect lines, and the list that compares materials, as a person sees them.
import { demand, find, runCommand } from './doing.mjs';

const limit = { timeout: 60_000 };

export const lookUpSteps = [
  {
    name: 'expectations',
    file: 'sled_deck.layup',
    only: 'light',
    async see(page, editor) {
      await editor.locator('.view-line', { hasText: 'recipe sled_deck' }).first().waitFor(limit);
      await page.locator('.activitybar [aria-label^="Testing"]').first().click();
      const rows = page.locator('.test-explorer .monaco-list-row');
      const root = rows.filter({ hasText: 'sled_deck' }).first();
      await root.waitFor(limit);
      await root.click();
      await page.keyboard.press('ArrowRight');
      await rows
        .filter({ hasText: /^mass <= 2.3 kg/ })
        .first()
        .waitFor(limit);
      await rows.filter({ hasText: 'not computed yet' }).first().waitFor(limit);
      // nobody started a run, so neither a message nor the panel of results comes up by itself
      const shown = await page.locator('.test-output-peek:visible, .testing-peek-view:visible').count();
      if (shown > 0) throw new Error('results came up without being asked for');
    },
  },
  {
    name: 'compare-materials',
    file: 'sled_deck.layup',
    only: 'dark',
    async see(page, editor) {
      await find(page, editor, 'foam_80');
      await runCommand(page, 'Compare Materials');
      const rows = page.locator('.quick-input-list .monaco-list-row');
      await rows
        .filter({ hasText: /mass [+\u2212]\d/ })
        .first()
        .waitFor(limit);
    },
  },
  {
    name: 'compare-materials-accepted',
    file: 'sled_deck.layup',
    only: 'light',
    async see(page, editor) {
      const line = (words) => editor.locator('.view-line', { hasText: words }).first();
      const rows = page.locator('.quick-input-list .monaco-list-row');
      await find(page, editor, 'core body foam_80');
      await runCommand(page, 'Compare Materials');
      // as it is comes first; the next one is another
      await rows
        .filter({ hasText: /mass [+\u2212]\d/ })
        .first()
        .waitFor(limit);
      await page.keyboard.press('ArrowDown');
      const other = await page.locator('.quick-input-list .monaco-list-row.focused .label-name').first().textContent();
      demand(other !== null && other !== 'foam_80', `${other} is no other material`);
      await page.keyboard.press('Enter');
      const use = rows.filter({ hasText: `Use ${other} in sled_deck` }).first();
      await use.waitFor(limit);
      const preview = (await use.textContent()).replace(/\s+/g, ' ');
      demand(/edits 1 place/.test(preview), `where it edits is not told: ${preview}`);
      demand(/mass .+ cost .+ thickness /.test(preview), `what it changes is not told: ${preview}`);
      demand((await line('core body foam_80').count()) === 1, 'the text was edited before anything was chosen');
      await page.keyboard.type(`Use ${other} in sled_deck`);
      await page.keyboard.press('Enter');
      await line(`core body ${other}`).waitFor(limit);
      demand((await line('core body foam_80').count()) === 0, 'the old name is still there');
      await editor
        .locator('.codelens-decoration', { hasText: /mass\s[\d.]+\skg/ })
        .first()
        .waitFor(limit);
      // one step back is the text of before
      await page.keyboard.press('Control+z');
      await line('core body foam_80').waitFor(limit);
      await page.keyboard.press('Control+y');
      await line(`core body ${other}`).waitFor(limit);
    },
  },
];
