// The Testing view with the expect lines, and the list that compares materials, as a person sees them.
import { find, runCommand } from './card-steps.mjs';

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
];
