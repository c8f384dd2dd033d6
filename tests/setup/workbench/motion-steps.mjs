// Who asks the system for less motion gets none: no page of ours animates, glides or fades; seen while it is redrawn.
import { demand, find, runCommand, viewFrame } from './doing.mjs';

const limit = { timeout: 60_000 };

/** What moves in a page, or would at the next change: animations, and times of transitions and of gliding scrolls. */
const moving = (view) =>
  view.locator('body').evaluate((body) => {
    const { document, window } = { document: body.ownerDocument, window: body.ownerDocument.defaultView };
    const seconds = (list) => Math.max(0, ...list.split(',').map((each) => Number.parseFloat(each)));
    const found = document.getAnimations().map((each) => `an animation of ${each.effect?.target?.tagName}`);
    for (const element of [document.documentElement, ...document.querySelectorAll('*')]) {
      for (const part of [undefined, '::before', '::after']) {
        const style = window.getComputedStyle(element, part);
        const name = `${element.tagName}.${element.getAttribute('class') ?? ''}${part ?? ''}`;
        if (seconds(style.transitionDuration) > 0) found.push(`${name} takes ${style.transitionDuration}`);
        if (style.animationName !== 'none' && seconds(style.animationDuration) > 0) found.push(`${name} is animated`);
        if (style.scrollBehavior === 'smooth') found.push(`${name} glides`);
      }
    }
    return { asked: window.matchMedia('(prefers-reduced-motion: reduce)').matches, found: [...new Set(found)] };
  });

const views = [
  { command: 'Show Layer Card', there: 'svg.stack', key: 'ArrowUp', fades: true },
  { command: 'Show Plan', there: 'svg.drawing', key: 'Tab' },
  { command: 'Show Build Sheet', there: '.step' },
  { command: 'Show Records of the Recipe', there: 'figure svg' },
];

export const motionSteps = [
  {
    name: 'less-motion',
    file: 'sled_deck.layup',
    only: 'light',
    async see(page, editor) {
      await page.emulateMedia({ reducedMotion: 'no-preference' });
      await find(page, editor, 'ply outer');
      for (const { command, there, key, fades } of views) {
        await runCommand(page, command);
        const view = viewFrame(page);
        const part = view.locator(there).first();
        await part.waitFor(limit);
        await page.emulateMedia({ reducedMotion: 'reduce' });
        if (key !== undefined) {
          await part.focus();
          await page.keyboard.press(key);
        }
        const { asked, found } = await moving(view);
        demand(asked, `${command}: the page was not asked for less motion`);
        demand(found.length === 0, `${command} moves where less motion is asked for: ${found.join(', ')}`);
        await page.emulateMedia({ reducedMotion: 'no-preference' });
        const usual = await moving(view);
        demand(!usual.asked, `${command}: the page is always asked for less motion`);
        // what fades elsewhere is seen by the same look
        demand(
          usual.found.length > 0 === (fades === true),
          `${command} moves by ${usual.found.join(', ') || 'nothing'}`,
        );
        await page.emulateMedia({ reducedMotion: 'reduce' });
        await editor.locator('.view-line').first().click();
        await find(page, editor, 'ply outer');
      }
    },
  },
];
