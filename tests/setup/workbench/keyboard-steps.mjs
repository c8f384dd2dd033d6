// By keys alone: each view of ours is opened from the text, reached, gone through with Tab and left again, and no key but Tab
// and those of the editor are needed (WCAG 2.2, 2.1.1 and 2.1.2: all works from a keyboard, and nothing traps its focus).
import { demand, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

/** Where the keys go in the window: the text, the page of a view, or the name of another part. */
const whereKeysGo = (page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (at?.tagName === 'IFRAME') return 'view';
    if (at?.closest('.editor-instance .monaco-editor')) return 'text';
    return at?.closest('.part')?.id ?? at?.className ?? 'nowhere';
  });

/** Waits until the keys go to a part, or `elsewhere`: out of the page of a view. */
async function keysGoTo(page, wanted, after) {
  const end = Date.now() + limit.timeout / 3;
  for (;;) {
    const at = await whereKeysGo(page);
    if (wanted === 'elsewhere' ? at !== 'view' : at === wanted) return;
    if (Date.now() > end) throw new Error(`after ${after} the keys go to ${at}, not to ${wanted}`);
    await page.waitForTimeout(100);
  }
}

/** To the page beside the text; the editor hands the focus over to the page a moment after it has it. */
async function enter(page, view, from) {
  await go(page, 'Control+2', 'view', from);
  const isInside = () => view.locator('body').evaluate((body) => body.ownerDocument.hasFocus());
  for (const end = Date.now() + limit.timeout / 3; !(await isInside()); await page.waitForTimeout(100))
    demand(Date.now() < end, `after Control+2 in ${from} the page itself has no focus`);
  await page.waitForTimeout(300);
}

/** Presses keys that the editor has for going to a part of the window. */
async function go(page, keys, wanted, from) {
  await page.keyboard.press(keys);
  await keysGoTo(page, wanted, `${keys} in ${from}`);
}

/** What stands in the order of Tab in a page, by number. The page forgets marks when it is redrawn: its window keeps the list. */
const tabStops = (view) =>
  view.locator('body').evaluate((body) => {
    const all = body.querySelectorAll('a[href], button, input, select, summary, [tabindex]');
    const stops = [...all].filter((each) => each.tabIndex >= 0 && !each.disabled && each.checkVisibility());
    body.ownerDocument.defaultView.tabStops = stops;
    return stops.map((each) => each.outerHTML.slice(0, 60));
  });

/** Those that stand there still: what is said of a chosen thing goes when Tab chooses the next. */
const stillThere = (view) =>
  view.locator('body').evaluate((body) => {
    const { tabStops: stops } = body.ownerDocument.defaultView;
    return stops.flatMap((each, at) => (each.isConnected && each.checkVisibility() ? [at] : []));
  });

/** The number of the stop that has the focus in a page, whether one sees it there, and the thing inside of it that is at hand. */
const focused = (view) =>
  view.locator('body').evaluate((body) => {
    const at = body.ownerDocument.activeElement;
    if (!body.ownerDocument.hasFocus()) return undefined;
    // what had the focus was redrawn: the next Tab goes on from there
    if (at === null || at === body) return { seen: true, inside: 'nothing' };
    const window = body.ownerDocument.defaultView;
    const { outlineStyle, outlineWidth } = window.getComputedStyle(at);
    const seen = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0;
    return { stop: window.tabStops.indexOf(at), seen, inside: at.getAttribute('aria-activedescendant') ?? '' };
  });

/** More than any page has; whoever presses Tab more often is trapped. */
const mostPresses = 150;

/** Presses Tab until the keys leave the page; what was passed, in order. */
async function tabThrough(page, view, key) {
  const passed = [];
  for (let pressed = 0; pressed < mostPresses; pressed++) {
    await page.keyboard.press(key);
    const at = (await whereKeysGo(page)) === 'view' ? await focused(view) : undefined;
    if (at === undefined) return passed;
    passed.push(at);
  }
  throw new Error(`${mostPresses} times ${key} do not leave ${JSON.stringify(passed.at(-1))}`);
}

const views = [
  { command: 'Show Layer Card', there: 'svg.stack' },
  { command: 'Show Plan', there: 'svg.drawing' },
  { command: 'Show Build Sheet', there: '.step' },
  { command: 'Show Records of the Recipe', there: 'figure svg' },
  { command: 'Show Report of the Recipe', there: 'h1' },
];

/** One view: opened, reached with the key of the second group, gone through both ways, left with that of the first. */
async function reachAndLeave(page, { command, there }) {
  await runCommand(page, command);
  const view = viewFrame(page);
  await view.locator(there).first().waitFor(limit);
  await enter(page, view, 'the text');
  const stops = await tabStops(view);
  const passed = await tabThrough(page, view, 'Tab');
  const reached = new Set(passed.map(({ stop }) => stop));
  const left = await stillThere(view);
  const missed = stops.filter((_, at) => left.includes(at) && !reached.has(at));
  demand(missed.length === 0, `${command}: Tab does not reach ${missed.join(', ')}`);
  const unseen = passed.filter(({ seen }) => !seen).map(({ stop }) => stops[stop]);
  demand(unseen.length === 0, `${command}: one does not see that the keys go to ${[...new Set(unseen)].join(', ')}`);
  await enter(page, view, 'what follows the page');
  await tabThrough(page, view, 'Shift+Tab');
  // Out of the page by the editor's own keys: to the side bar, and to the text. (F6, to the next part, the editor knows in a text
  // and in a tree; out of the page of an extension it does not lead, whosever it is.)
  await enter(page, view, 'what is before the page');
  await go(page, 'Control+0', 'workbench.parts.sidebar', command);
  await enter(page, view, 'the side bar');
  await go(page, 'Control+1', 'text', command);
  console.log(`  ${command}: ${stops.length} stops, ${passed.length} presses of Tab`);
}

/** Whether the keys go to a list below an element. */
const keysAreIn = (page, within) =>
  page.evaluate((above) => {
    const list = document.activeElement?.closest('.monaco-list');
    return list !== null && list !== undefined && list.closest(above) !== null;
  }, within);

/** More than any view has above its list. */
const mostAbove = 8;

/** A tree of ours is reached by its command and Tab, walked with arrows, and left with F6. */
async function walkTree(page, { command, tree, words }) {
  await runCommand(page, command);
  const rows = page.locator(`${tree} .monaco-list-row`);
  await rows.filter({ hasText: words }).first().waitFor(limit);
  // a view that is opened before it knows its rows hands the focus on only when it is asked again
  await runCommand(page, command);
  await page.waitForTimeout(500);
  for (let pressed = 0; !(await keysAreIn(page, tree)); pressed++) {
    demand(pressed < mostAbove, `${command}: the keys do not go there`);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('ArrowDown');
  await page.locator(`${tree} .monaco-list-row.focused`).first().waitFor(limit);
  await page.keyboard.press('F6');
  await page.waitForTimeout(500);
  demand(!(await keysAreIn(page, tree)), `${command}: F6 does not leave it`);
  await go(page, 'Control+1', 'text', command);
}

const trees = [
  { command: 'Explorer: Focus on Shop Book View', tree: '.pane:has([aria-label^="Shop Book"])', words: 'Recipes' },
  { command: 'Testing: Focus on Test Explorer View', tree: '.test-explorer', words: 'sled_deck' },
];

export const keyboardSteps = [
  {
    name: 'keyboard-alone',
    file: 'sled_deck.layup',
    only: 'dark',
    async see(page, editor) {
      await editor.locator('.view-line', { hasText: 'ply outer' }).first().waitFor(limit);
      await go(page, 'Control+1', 'text', 'the window');
      await page.keyboard.press('Control+f');
      await page.keyboard.type('ply outer');
      await page.keyboard.press('Enter');
      await page.keyboard.press('Escape');
      for (const view of views) await reachAndLeave(page, view);
      for (const tree of trees) await walkTree(page, tree);
    },
  },
];
