// Opens the sample workshop in the headless workbench in each kind of theme, checks what a person would see
// (squiggles, the Problems panel, a hover) and keeps the pictures in tests/out/screenshots.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { root } from '../paths.mjs';
import { seeInBrowser } from './browser-steps.mjs';
import { cardSteps } from './card-steps.mjs';
import { blockOutside, launchBrowser, remoteUri, startServer, workbenchUrl } from './host.mjs';
import { keyboardSteps } from './keyboard-steps.mjs';
import { languageSteps } from './language-steps.mjs';
import { closeBrowser, looksOf } from './look-twice.mjs';
import { lookUpSteps } from './look-up-steps.mjs';
import { motionSteps } from './motion-steps.mjs';
import { paperSteps } from './paper-steps.mjs';
import { planSteps } from './plan-steps.mjs';
import { seeSurroundings } from './surroundings.mjs';

export const folder = path.join(root, 'tests/out/screenshots');
const limit = { timeout: 60_000 };

export const themes = [
  { name: 'light', theme: 'Default Light Modern' },
  { name: 'dark', theme: 'Default Dark Modern' },
  { name: 'high-contrast', theme: 'Default High Contrast' },
  { name: 'high-contrast-light', theme: 'Default High Contrast Light' },
];

export const settingsOf = (theme) => ({
  'workbench.colorTheme': theme,
  'editor.minimap.enabled': false,
  'editor.fontSize': 13,
  'problems.autoReveal': false,
});

/** Middle of a text on the page, found in the editor's visible lines; undefined when it is not there. */
const placeOf = (editor, text) =>
  editor.evaluate((element, wanted) => {
    for (const line of element.querySelectorAll('.view-lines .view-line')) {
      // The editor shows spaces as no-break spaces, cut into spans by colour.
      const nodes = [];
      const walker = line.ownerDocument.createTreeWalker(line, 4);
      while (walker.nextNode()) nodes.push(walker.currentNode);
      const start = nodes
        .map((node) => node.data)
        .join('')
        .replaceAll('\u00a0', ' ')
        .indexOf(wanted);
      if (start < 0) continue;
      let passed = 0;
      for (const node of nodes) {
        if (start < passed + node.data.length) {
          const range = line.ownerDocument.createRange();
          range.setStart(node, start - passed);
          range.setEnd(node, Math.min(start - passed + wanted.length, node.data.length));
          const box = range.getBoundingClientRect();
          return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
        }
        passed += node.data.length;
      }
    }
    return undefined;
  }, text);

/**
 * Rests the pointer on a text until a hover shows that says what is wanted. While the server starts there is none yet; lines
 * move down when figures come in above them, and then the pointer rests on another line and is put on the text again.
 */
async function hoverOver(page, editor, text, wanted) {
  const hover = page.locator('.monaco-hover:visible', { hasText: wanted }).first();
  for (let attempt = 1; ; attempt++) {
    const place = await placeOf(editor, text);
    if (!place) throw new Error(`"${text}" is not to be seen`);
    await page.mouse.move(place.x, place.y + 200);
    await page.mouse.move(place.x, place.y, { steps: 5 });
    const seen = await hover.waitFor({ timeout: 2000 }).then(
      () => true,
      () => false,
    );
    if (seen) return;
    if (attempt === 20) throw new Error(`no hover on "${text}" says ${wanted}`);
  }
}

/** What a person does, step by step; each must be seen, and ends in a picture. */
const steps = [
  {
    name: 'sled-deck',
    file: 'sled_deck.layup',
    async see(page, editor) {
      await editor.locator('.view-line', { hasText: 'stack' }).first().waitFor(limit);
      await hoverOver(page, editor, 'ply outer', /mass.*\d\s*k?g\b/is);
    },
  },
  {
    name: 'first-try',
    file: 'first_try.layup',
    async see(page, editor) {
      await editor.locator('.squiggly-error, .squiggly-warning').first().waitFor(limit);
      await page.keyboard.press('Control+Shift+KeyM');
      await page.locator('.markers-panel .monaco-list-row', { hasText: 'wrap/short' }).first().waitFor(limit);
    },
  },
];

/**
 * One window for each step and theme: the file is opened by the page's address. The language is that which the editor's own
 * translation would set; it comes without one.
 */
async function picture(server, browser, workspace, step, name) {
  const { zoom = 1, language } = step;
  const viewport = { width: 1280 / zoom, height: 860 / zoom };
  const context = await browser.newContext({ viewport, deviceScaleFactor: zoom });
  await blockOutside(context, server);
  if (language !== undefined)
    await context.addInitScript((code) => {
      globalThis._VSCODE_NLS_LANGUAGE = code;
    }, language);
  const page = await context.newPage();
  const file = path.join(folder, `${step.name}-${name}.png`);
  try {
    const payload = [['openFile', remoteUri(server, path.join(workspace, step.file))]];
    await page.goto(workbenchUrl(server, workspace, payload));
    const editor = page.locator(`.monaco-editor[data-uri$="/${step.file}"]`);
    await editor.waitFor(limit);
    await step.see(page, editor);
  } finally {
    await page.screenshot({ path: file });
    await context.close();
  }
}

const all = [
  ...steps,
  ...cardSteps,
  ...planSteps,
  ...paperSteps,
  ...lookUpSteps,
  ...languageSteps,
  ...motionSteps,
  ...keyboardSteps,
];

/** The pictures of the wanted steps in one theme; returns how many were seen and how many failed. */
export async function takePictures({ browser, lookTwice, server, workspace }, name, wanted = /./) {
  const seen = { passed: 0, failed: 0 };
  for (const step of all.filter((each) => (each.only ?? name) === name && wanted.test(each.name))) {
    const look = () => picture(server, browser, workspace, step, name);
    seen[(await lookTwice(`${step.name}, ${name}`, look)) ? 'passed' : 'failed'] += 1;
  }
  return seen;
}

/** Looks at all that is to be seen, and takes the pictures; returns how many were seen and how many failed. */
export async function takeScreenshots(extensionsDir, workspace) {
  mkdirSync(folder, { recursive: true });
  let passed = 0;
  let failed = 0;
  const browser = await launchBrowser();
  const lookTwice = looksOf(browser);
  try {
    const around = await seeSurroundings({
      browser,
      lookTwice,
      extensionsDir,
      workspace,
      folder,
      settings: settingsOf(themes[0].theme),
    });
    passed += around.passed;
    failed += around.failed;
    for (const { name, theme } of themes) {
      const server = await startServer({ extensionsDir, settings: settingsOf(theme) });
      try {
        if (name === 'light') {
          const settings = settingsOf(theme);
          const alone = await seeInBrowser({ browser, lookTwice, server, extensionsDir, folder, settings });
          passed += alone.passed;
          failed += alone.failed;
        }
        const seen = await takePictures({ browser, lookTwice, server, workspace }, name);
        passed += seen.passed;
        failed += seen.failed;
      } finally {
        await server.stop();
      }
    }
  } finally {
    await closeBrowser(browser);
  }
  console.log(`  pictures: ${path.relative(root, folder)}`);
  return { passed, failed };
}
