// Build sheet and records as a person sees them beside the text: paper is white in every theme, and all of it can be read.
import { demand, find, readable, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

/** Paper is as it comes out of the printer, whatever the editor looks like. */
async function white(paper) {
  const [back, front] = await paper
    .locator('#paper')
    .evaluate((page) => [getComputedStyle(page).backgroundColor, getComputedStyle(page).color]);
  demand(back === 'rgb(255, 255, 255)' && front === 'rgb(0, 0, 0)', `${front} on ${back} is no paper`);
}

export const paperSteps = [
  {
    name: 'build-sheet',
    file: 'sled_deck.layup',
    async see(page, editor) {
      await find(page, editor, 'ply outer');
      await runCommand(page, 'Show Build Sheet');
      const paper = viewFrame(page);
      await paper.locator('h1', { hasText: 'Rescue sled deck' }).waitFor(limit);
      await white(paper);
      await readable(paper);
      demand((await paper.locator('.step').count()) === 29, 'not every step is on the sheet');
    },
  },
  {
    name: 'build-sheet-steps',
    file: 'sled_deck.layup',
    async see(page, editor) {
      await page.keyboard.press('Control+b');
      await find(page, editor, 'ply outer');
      await runCommand(page, 'Show Build Sheet');
      const paper = viewFrame(page);
      const pot = paper.locator('.pot').first();
      await pot.waitFor(limit);
      // The page is patched while figures come in: a wait for the place to be still could lose the element.
      await pot.evaluate((element) => element.scrollIntoView());
    },
  },
  {
    name: 'records',
    file: 'sled_deck.layup',
    async see(page, editor) {
      await find(page, editor, 'ply outer');
      await runCommand(page, 'Show Records of the Recipe');
      const paper = viewFrame(page);
      await paper.locator('figure svg').first().waitFor(limit);
      await white(paper);
      await readable(paper);
    },
  },
];
