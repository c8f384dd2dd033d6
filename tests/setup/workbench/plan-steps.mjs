// The plan as a person sees it: opened from the command palette, read, walked through with keys and pointer, in every kind of
// theme and at twice the size; both ways between text and drawing, with the time each takes; and 500 redraws of it.
import { demand, find, readable, redrawn, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

async function openPlan(page, editor, words) {
  await find(page, editor, words);
  await runCommand(page, 'Show Plan');
  const plan = viewFrame(page);
  await plan.locator('svg.drawing').waitFor(limit);
  return plan;
}

const chosen = (plan, key) => plan.locator(`.thing.chosen[data-thing="${key}"]`).first();

/** A page waits no longer than this for what a key or a click brings, ms. */
const pageWait = 5000;

/** Milliseconds from a key in the text until another thing stands out in the drawing: counted in the page that shows both. */
async function followTime(page, editor, plan) {
  await find(page, editor, 'ply outer');
  await chosen(plan, 'cloth stack.0 outer').waitFor(limit);
  const frame = await plan.locator('body').elementHandle();
  const waiting = frame.evaluate(
    (body, most) =>
      new Promise((resolve) => {
        const end = Date.now() + most;
        const seen = () => {
          if (body.querySelector('.thing.chosen[data-thing="cloth stack.1 keel"]')) resolve(Date.now());
          else if (Date.now() > end) resolve(undefined);
          else setTimeout(seen, 1);
        };
        seen();
      }),
    pageWait,
  );
  const start = Date.now();
  const [seen] = await Promise.all([waiting, page.keyboard.press('ArrowDown')]);
  return seen && seen - start;
}

/** Milliseconds from a click on a shape until the cursor is on its line: counted from the pointer going up, in the page. */
async function pickTime(page, plan) {
  const shape = plan.locator('.thing[data-thing="insert stack.3 bolts"] .line').first();
  await shape.waitFor(limit);
  const lifting = plan.locator('body').evaluate(
    (body, most) =>
      new Promise((resolve) => {
        body.addEventListener('pointerup', () => resolve(Date.now()), { capture: true, once: true });
        setTimeout(resolve, most);
      }),
    pageWait,
  );
  const going = page.evaluate(
    (most) =>
      new Promise((resolve) => {
        const end = Date.now() + most;
        const seen = () => {
          const number = document.querySelector('.line-numbers.active-line-number');
          if (number?.textContent === '21') resolve(Date.now());
          else if (Date.now() > end) resolve(undefined);
          else setTimeout(seen, 1);
        };
        seen();
      }),
    pageWait,
  );
  const click = async () =>
    plan.locator('svg.drawing').click({ position: await inDrawing(plan, await shape.boundingBox()) });
  const [up, there] = await Promise.all([lifting, going, click()]);
  return up && there && there - up;
}

async function inDrawing(plan, box) {
  const all = await plan.locator('svg.drawing').boundingBox();
  return { x: box.x - all.x + 3, y: box.y - all.y + box.height / 5 };
}

/** Keys move, go closer and fit; Tab goes from thing to thing and Enter to its line; the text gets the focus only then. */
async function walk(page, editor, plan) {
  const drawing = plan.locator('svg.drawing');
  const seen = () => drawing.getAttribute('viewBox');
  await drawing.focus();
  const whole = await seen();
  await page.keyboard.press('+');
  await page.keyboard.press('ArrowLeft');
  demand((await seen()) !== whole, 'keys do not move the drawing');
  await page.keyboard.press('0');
  demand((await seen()) === whole, '0 does not fit the drawing');
  await page.keyboard.press('Tab');
  await plan.locator('.thing.chosen').first().waitFor(limit);
  const still = await drawing.evaluate((element) => element.ownerDocument.activeElement === element);
  demand(still, 'the drawing lost the focus when the cursor moved');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement?.closest('.monaco-editor') !== null, undefined, limit);
  await editor.locator('.current-line').first().waitFor(limit);
}

/** Saves beside the recipe, as the dialog offers it; the file is then to be seen in the explorer. */
async function saveAs(page, plan, format) {
  await plan.locator(`button[data-save="${format}"]`).click();
  await page.waitForFunction(
    (ending) => document.querySelector('.quick-input-widget input')?.value.endsWith(ending),
    `/sled_deck-plan.${format}`,
    limit,
  );
  await page.keyboard.press('Enter');
  await page
    .locator('.explorer-folders-view .monaco-list-row', { hasText: `sled_deck-plan.${format}` })
    .first()
    .waitFor(limit);
}

/** 500 redraws, each an answer of the server with other shapes. */
async function redraw(page, plan) {
  /** From the plan to the section and back, from size to size: every answer replaces most of the picture. */
  const goThrough = (times) =>
    plan.locator('body').evaluate(async (body, count) => {
      const { Event } = body.ownerDocument.defaultView;
      const title = () => body.querySelector('h1')?.textContent;
      let redraws = 0;
      for (let i = 0, lost = 0; i < count && lost < 3; i++) {
        const before = title();
        const select = body.querySelector('select[data-choice="size"]');
        select.value = select.value === '' ? 'short' : '';
        select.dispatchEvent(new Event('change', { bubbles: true }));
        const end = Date.now() + 5000;
        while (title() === before && Date.now() < end) await new Promise((done) => setTimeout(done, 2));
        if (title() !== before) redraws += 1;
        else lost += 1;
      }
      return redraws;
    }, times);
  await redrawn(page, goThrough);
}

export const planSteps = [
  {
    name: 'plan',
    file: 'sled_deck.layup',
    async see(page, editor) {
      const plan = await openPlan(page, editor, 'ply outer');
      await chosen(plan, 'cloth stack.0 outer').waitFor(limit);
      demand((await plan.locator('[role="option"]').count()) >= 16, 'not everything is drawn');
      await readable(plan);
      await walk(page, editor, plan);
      await find(page, editor, 'patch pad');
      await chosen(plan, 'cloth stack.4 pad').waitFor(limit);
    },
  },
  {
    name: 'section',
    file: 'sled_deck.layup',
    async see(page, editor) {
      await find(page, editor, 'core body');
      await runCommand(page, 'Show Section');
      const plan = viewFrame(page);
      await plan.locator('h1', { hasText: 'Section of sled_deck' }).waitFor(limit);
      await chosen(plan, 'core stack.2 body').waitFor(limit);
      await readable(plan);
    },
  },
  {
    name: 'plan-large',
    file: 'sled_deck.layup',
    only: 'dark',
    // a window of 1280 by 860 at 200 %
    zoom: 2,
    async see(page, editor) {
      await page.keyboard.press('Control+b');
      const plan = await openPlan(page, editor, 'ply outer');
      await readable(plan);
      await plan.locator('details.table summary').click();
      await plan.locator('details.table tbody tr').first().waitFor(limit);
      await readable(plan);
    },
  },
  {
    name: 'plan-linked',
    file: 'sled_deck.layup',
    only: 'dark',
    async see(page, editor) {
      const plan = await openPlan(page, editor, 'ply outer');
      const times = { follow: [], pick: [] };
      for (let i = 0; i < 7; i++) {
        times.follow.push(await followTime(page, editor, plan));
        times.pick.push(await pickTime(page, plan));
      }
      // A window that was laid out anew between a look and a click may lose a click; most are there.
      const [follow, pick] = [times.follow, times.pick].map((each) => each.filter((time) => time !== undefined));
      demand(follow.length >= 4, `the drawing followed the cursor ${follow.length} times of 7`);
      demand(pick.length >= 4, `the cursor went to what was clicked ${pick.length} times of 7`);
      const least = [follow, pick].map((each) => Math.min(...each));
      console.log(`  cursor to shape in ${least[0]} ms, shape to cursor in ${least[1]} ms (least of 7)`);
    },
  },
  {
    name: 'plan-saved',
    file: 'sled_deck.layup',
    only: 'dark',
    async see(page, editor) {
      const plan = await openPlan(page, editor, 'ply outer');
      await plan.locator('details.menu summary').click();
      for (const format of ['svg', 'png', 'pdf', 'dxf']) await saveAs(page, plan, format);
    },
  },
  {
    name: 'plan-redrawn',
    file: 'sled_deck.layup',
    only: 'dark',
    async see(page, editor) {
      const plan = await openPlan(page, editor, 'ply outer');
      await redraw(page, plan);
    },
  },
];
