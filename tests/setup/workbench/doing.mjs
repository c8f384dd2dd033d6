// What steps do again and again: run a command, put the cursor on words, get at the page of a view, ask that something holds;
// and what every page of ours must be.
const limit = { timeout: 60_000 };

/** The page of a view beside the text: a frame in a frame. */
export const viewFrame = (page) => page.frameLocator('iframe.webview.ready').last().frameLocator('#active-frame');

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

export function demand(good, words) {
  if (!good) throw new Error(words);
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

/**
 * Redraws a page 500 times; `again(count)` does so and tells how often it came about. The page is patched, so neither elements nor
 * memory add up.
 */
export async function redrawn(page, again) {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const measure = async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    const of = (name) => metrics.find((metric) => metric.name === name).value;
    return { nodes: of('Nodes'), heap: of('JSHeapUsedSize') };
  };
  await again(20);
  const before = await measure();
  const start = Date.now();
  const redraws = await again(500);
  const each = (Date.now() - start) / 500;
  const after = await measure();
  console.log(
    `  ${redraws} redraws of ${each.toFixed(0)} ms: ${after.nodes - before.nodes} more nodes, ${((after.heap - before.heap) / 1024).toFixed(0)} kB more memory`,
  );
  demand(redraws === 500, `${redraws} redraws of 500`);
  demand(after.nodes - before.nodes < 300, `${after.nodes - before.nodes} nodes were left over`);
  demand(after.heap - before.heap < 5 * 2 ** 20, `${after.heap - before.heap} bytes were left over`);
}
