// The editor in German: what is ours speaks German in it, by the tables that a translator edits; the editor's own words stay
// English here, for it comes without its German.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../paths.mjs';
import { demand, find, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

const table = (file) => JSON.parse(readFileSync(path.join(root, file), 'utf8'));
const texts = table('language/l10n/de.json');
const titles = table('extension/l10n/package.nls.de.json');
const englishTitles = table('extension/l10n/package.nls.json');
const pages = table('extension/l10n/bundle.l10n.de.json');
const snippets = table('extension/l10n/snippets.de.json');

/** The English words of ours, each in a text of the page. */
const english = /\b(mass|thickness|cost|resin to mix|layers?|open findings?|piece|figures|stack)\b/i;

function demandGerman(where, words) {
  const said = english.exec(words)?.[0];
  demand(said === undefined, `${where} says ${said} in English: ${words.slice(0, 200)}`);
}

export const languageSteps = [
  {
    name: 'german',
    file: 'sled_deck.layup',
    only: 'light',
    language: 'de',
    async see(page, editor) {
      const lens = editor.locator('.codelens-decoration').first();
      await editor
        .locator('.codelens-decoration', { hasText: new RegExp(`${texts.mass}\\s[\\d,]+\\skg`) })
        .first()
        .waitFor(limit);
      demandGerman('the line above the recipe', (await lens.textContent()) ?? '');
      await find(page, editor, 'ply outer');
      // the editor's own command, in its own language
      await runCommand(page, 'Show or Focus Hover');
      const hover = page.locator('.monaco-hover:visible', { hasText: /\d,\d/ }).first();
      await hover.waitFor(limit);
      // notation stands in a frame of its own
      const told = await hover.evaluate((element) => {
        const copy = element.cloneNode(true);
        for (const code of copy.querySelectorAll('code, .monaco-tokenized-source')) code.remove();
        return copy.textContent ?? '';
      });
      demandGerman('the hover', told);
    },
  },
  {
    name: 'german-commands',
    file: 'sled_deck.layup',
    only: 'light',
    language: 'de',
    async see(page, editor) {
      await find(page, editor, 'ply outer');
      await runCommand(page, titles['command.showLayerCard']);
      const card = viewFrame(page);
      await card.locator('h1', { hasText: /^outer$/ }).waitFor(limit);
      await card.locator('h2', { hasText: pages.Figures }).waitFor(limit);
      demand((await card.locator('html').getAttribute('lang')) === 'de', 'the card does not say that it is German');
      demandGerman('the card', await card.locator('body').innerText());
      await page.keyboard.press('F1');
      await page.locator('.quick-input-widget:visible input').first().fill('>Laybook: ');
      const rows = page.locator('.quick-input-list .monaco-list-row', { hasText: 'Laybook' });
      await rows.filter({ hasText: titles['command.showPlan'] }).first().waitFor(limit);
      // below the title of a command the editor writes the one that its author wrote
      const shown = await rows.evaluateAll((all) =>
        all.map((row) => row.querySelector('.label-name')?.textContent ?? ''),
      );
      const left = Object.values(englishTitles).filter((title) =>
        shown.some((row) => row.includes(`Laybook: ${title}`)),
      );
      demand(shown.length > 5, `${shown.length} commands are shown`);
      demand(left.length === 0, `commands are called in English: ${left.join(', ')}`);
    },
  },
  {
    name: 'german-snippets',
    file: 'shop.layup',
    only: 'light',
    language: 'de',
    async see(page, editor) {
      await editor.locator('.view-line').first().click();
      await runCommand(page, 'Insert Snippet');
      const rows = page.locator('.quick-input-list .monaco-list-row');
      await rows.filter({ hasText: snippets['The layers from the mould outwards'] }).first().waitFor(limit);
      const english = await rows.filter({ hasText: 'The layers' }).count();
      demand(english === 0, 'a snippet speaks English');
    },
  },
];
