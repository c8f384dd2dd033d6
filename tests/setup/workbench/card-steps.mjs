// The layer card as a person sees it: opened from the command palette, read, walked through with the keyboard, in every
// kind of theme and at twice the size; and 500 redraws of it.
import { demand, find, named, readable, redrawn, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

/** Puts the cursor on a line by finding its words, and shows the card of it. */
async function openCard(page, editor, words) {
  await find(page, editor, words);
  await runCommand(page, 'Show Layer Card');
  const card = viewFrame(page);
  await card.locator('h1').waitFor(limit);
  return card;
}

const titled = (card, name) => card.locator('h1', { hasText: new RegExp(`^${name}$`) }).waitFor(limit);

/** Arrow keys go from layer to layer and keep the focus; with the switch on, the cursor in the text goes along; Enter goes to the text. */
async function walk(page, editor, card) {
  const stack = card.locator('svg.stack');
  await stack.focus();
  await page.keyboard.press('ArrowUp');
  await titled(card, 'keel');
  await page.keyboard.press('Home');
  await titled(card, 'inner');
  await page.keyboard.press('End');
  await titled(card, 'outer');
  await card.locator('input[data-toggle="moveCursor"]').check();
  await stack.focus();
  await page.keyboard.press('ArrowUp');
  await titled(card, 'keel');
  const still = await stack.evaluate((element) => element.ownerDocument.activeElement === element);
  demand(still, 'the stack lost the focus when the cursor moved');
  await page.keyboard.press('Enter');
  await editor.locator('.current-line').first().waitFor(limit);
  await page.waitForFunction(() => document.activeElement?.closest('.monaco-editor') !== null, undefined, limit);
}

/** 500 redraws, from layer to layer. */
async function redraw(page, card) {
  /** Lets the page's own keys go up and down the stack: each is a message there, an answer of the server and a redraw. */
  const goThrough = (times) =>
    card.locator('svg.stack').evaluate(async (stack, count) => {
      const root = stack.ownerDocument;
      const { KeyboardEvent } = root.defaultView;
      const title = () => root.querySelector('h1').textContent;
      let redraws = 0;
      for (let i = 0, lost = 0; i < count && lost < 3; i++) {
        const before = title();
        const key = Math.floor(i / 5) % 2 === 0 ? 'ArrowUp' : 'ArrowDown';
        stack.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
        const end = Date.now() + 5000;
        while (title() === before && Date.now() < end) await new Promise((done) => setTimeout(done, 2));
        if (title() !== before) redraws += 1;
        else lost += 1;
      }
      return redraws;
    }, times);
  await card.locator('svg.stack').focus();
  await page.keyboard.press('End');
  await titled(card, 'outer');
  await redrawn(page, goThrough);
}

export const cardSteps = [
  {
    name: 'layer-card',
    file: 'sled_deck.layup',
    async see(page, editor) {
      const card = await openCard(page, editor, 'ply outer');
      await titled(card, 'outer');
      demand((await card.locator('[role="option"]').count()) === 6, 'not all six layers are drawn');
      await readable(card);
      await named(card);
      await walk(page, editor, card);
      await editor.locator('.view-line', { hasText: 'ply outer' }).first().click();
      await titled(card, 'outer');
    },
  },
  {
    name: 'layer-card-large',
    file: 'sled_deck.layup',
    // a window of 1280 by 860 at 200 %
    zoom: 2,
    async see(page, editor) {
      await page.keyboard.press('Control+b');
      const card = await openCard(page, editor, 'ply outer');
      await titled(card, 'outer');
      await card.locator('[data-key="layer_mass"] summary').click();
      await card.locator('[data-key="layer_mass"] .reasons .link').first().waitFor(limit);
      await readable(card);
      await card.locator('[data-key="piece"]').evaluate((element) => element.scrollIntoView());
      await card.locator('[data-key="figures"] h2').evaluate((title) => title.scrollIntoView());
    },
  },
  {
    name: 'layer-card-redrawn',
    file: 'sled_deck.layup',
    only: 'dark',
    async see(page, editor) {
      const card = await openCard(page, editor, 'ply outer');
      await redraw(page, card);
    },
  },
];
