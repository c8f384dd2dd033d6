// The layer card as a person sees it: opened from the command palette, read, walked through with the keyboard, in every
// kind of theme and at twice the size; and 500 redraws of it.
const limit = { timeout: 60_000 };

/** The page of a view beside the text: a frame in a frame. */
export const cardFrame = (page) => page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame');

/** Runs a command by its name in plain words. */
export async function runCommand(page, words) {
  await page.keyboard.press('F1');
  const input = page.locator('.quick-input-widget:visible input').first();
  await input.waitFor(limit);
  await input.fill(`>${words}`);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: words }).first().waitFor(limit);
  await page.keyboard.press('Enter');
}

/** Puts the cursor on words of the text. */
export async function find(page, editor, words) {
  await editor.locator('.view-line').first().click();
  await page.keyboard.press('Control+f');
  await page.keyboard.type(words);
  await editor.locator('.view-line', { hasText: words }).first().waitFor(limit);
  await page.keyboard.press('Escape');
}

/** Puts the cursor on a line by finding its words, and shows the card of it. */
async function openCard(page, editor, words) {
  await find(page, editor, words);
  await runCommand(page, 'Show Layer Card');
  const card = cardFrame(page);
  await card.locator('h1').waitFor(limit);
  return card;
}

const titled = (card, name) => card.locator('h1', { hasText: new RegExp(`^${name}$`) }).waitFor(limit);

export function demand(good, words) {
  if (!good) throw new Error(words);
}

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

/**
 * Every text stands out from what is behind it by 4.5 to 1 (WCAG 2.2, 1.4.3), every line of a drawing by 3 to 1 (1.4.11), and
 * nothing is wider than the page.
 */
export async function readable(card) {
  const faults = await card.locator('body').evaluate((body) => {
    const view = body.ownerDocument.defaultView;
    const parse = (colour) => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const behind = (element) => {
      for (let at = element; at; at = at.parentElement) {
        const [r, g, b, a = 1] = parse(view.getComputedStyle(at).backgroundColor);
        if (a === 1) return [r, g, b];
      }
      // the editor paints what is behind the page
      const own = view
        .getComputedStyle(body.ownerDocument.documentElement)
        .getPropertyValue('--vscode-editor-background');
      const probe = body.appendChild(body.ownerDocument.createElement('span'));
      probe.style.color = own;
      const colour = parse(view.getComputedStyle(probe).color).slice(0, 3);
      probe.remove();
      return colour;
    };
    const channel = (value) => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
    const light = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
    const ratio = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
    const found = [];
    const check = (element, colour, least) => {
      const [r, g, b, a = 1] = parse(colour);
      const back = behind(element);
      const seen = [r, g, b].map((value, i) => value * a + back[i] * (1 - a));
      const by = ratio(seen, back);
      if (by < least) found.push(`${element.tagName} "${element.textContent.slice(0, 30)}" ${by.toFixed(2)} to 1`);
    };
    const texts = 'h1, h2, p, li, legend, label, .label, .value, button, summary, td, th, svg text';
    for (const element of body.querySelectorAll(texts)) {
      if (element.textContent.trim() === '' || element.getClientRects().length === 0) continue;
      const style = view.getComputedStyle(element);
      check(element, element.tagName === 'text' ? style.fill : style.color, 4.5);
    }
    for (const line of body.querySelectorAll('.thing .line')) check(line, view.getComputedStyle(line).stroke, 3);
    const root = body.ownerDocument.documentElement;
    if (root.scrollWidth > root.clientWidth + 1) found.push(`${root.scrollWidth} px wide in ${root.clientWidth} px`);
    return [...new Set(found)];
  });
  demand(faults.length === 0, `hard to read:\n  ${faults.join('\n  ')}`);
}

/** The names of all that can be focused, and of all options: none is without. */
export async function named(card) {
  const nameless = await card.locator('body').evaluate((body) =>
    [...body.querySelectorAll('button, summary, input, [role], [tabindex]')]
      .filter((element) => {
        const label =
          element.getAttribute('aria-label') ?? element.closest('label')?.textContent ?? element.textContent;
        return label.trim() === '' && element.id !== 'aloud' && !element.hidden;
      })
      .map((element) => element.outerHTML.slice(0, 80)),
  );
  demand(nameless.length === 0, `without a name: ${nameless.join(', ')}`);
  const aloud = card.locator('#aloud[aria-live="polite"]', { hasText: /\d/ });
  await aloud.waitFor({ ...limit, state: 'attached' });
}

/** 500 redraws, from layer to layer: the page is patched, so neither elements nor memory add up. */
async function redraw(page, card) {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const measure = async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    const of = (name) => metrics.find((metric) => metric.name === name).value;
    return { nodes: of('Nodes'), heap: of('JSHeapUsedSize') };
  };
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
  await goThrough(20);
  const before = await measure();
  const redraws = await goThrough(500);
  const after = await measure();
  console.log(
    `  ${redraws} redraws: ${after.nodes - before.nodes} more nodes, ${((after.heap - before.heap) / 1024).toFixed(0)} kB more memory`,
  );
  demand(redraws === 500, `${redraws} redraws of 500`);
  demand(after.nodes - before.nodes < 300, `${after.nodes - before.nodes} nodes were left over`);
  demand(after.heap - before.heap < 5 * 2 ** 20, `${after.heap - before.heap} bytes were left over`);
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
