/** The image that the plan is saved as, painted by a real browser under the rules of the page that it is painted in. */
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Drawing } from '../../calc/drawing/drawing.ts';
import { screenSvg } from '../../language/export/svg.ts';
import { launchBrowser } from '../setup/workbench/host.mjs';

const source = { path: 'part.outline' };
/** A plate of 400 mm by 200 mm with a hole, and words of letters that XML and addresses take for signs. */
const drawing: Drawing = {
  title: 'Plate <&> 100 %',
  seenFrom: 'bag side',
  low: { x: -0.2, y: -0.1 },
  high: { x: 0.2, y: 0.1 },
  items: [
    {
      kind: 'line',
      layer: 'outline',
      source,
      closed: true,
      points: [
        { x: -0.2, y: -0.1 },
        { x: 0.2, y: -0.1 },
        { x: 0.2, y: 0.1 },
        { x: -0.2, y: 0.1 },
      ],
    },
    { kind: 'circle', layer: 'insert', source, centre: { x: 0.1, y: 0 }, radius: 0.05 },
    { kind: 'text', layer: 'dimension', at: { x: -0.15, y: 0 }, height: 0.012, text: 'Größe #1 <&> 100 %' },
  ],
};

let browser: Browser;
let script: string;
beforeAll(async () => {
  const built = await build({
    entryPoints: [path.join(import.meta.dirname, '../../extension/plan/webview/image.ts')],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    globalName: 'picture',
  });
  script = built.outputFiles[0]?.text ?? '';
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

describe('the plan as an image', () => {
  it('is as long as asked, on white, with every shape where it belongs', async () => {
    const page = await browser.newPage();
    const rules = "default-src 'none'; img-src data:; script-src 'nonce-a'";
    await page.route('http://laybook.test/**', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: `<meta http-equiv="Content-Security-Policy" content="${rules}"><script nonce="a">${script}</script>`,
      }),
    );
    await page.goto('http://laybook.test/');
    const svg = screenSvg(drawing, { styled: true, marked: true, around: 20 });
    const base64: unknown = await page.evaluate(`picture.imageOf(${JSON.stringify(svg)}, 1760)`);
    await page.close();
    const image = await loadImage(Buffer.from(String(base64), 'base64'));
    // 440 mm by 240 mm with the room around it: 4 points to a millimetre
    expect([image.width, image.height]).toEqual([1760, 960]);
    const ground = createCanvas(image.width, image.height).getContext('2d');
    ground.drawImage(image, 0, 0);
    /** the least light within 2 mm of a place of the drawing, mm from the middle, 0 to 255 */
    const darkest = (x: number, y: number): number => {
      const { data } = ground.getImageData((x + 220) * 4 - 8, (120 - y) * 4 - 8, 16, 16);
      return Math.min(...data.filter((_, i) => i % 4 < 3));
    };
    for (const [x, y] of [
      [-200, 50],
      [200, -50],
      [0, 100],
      [0, -100],
      [150, 0],
      [50, 0],
      [100, 50],
    ] as const)
      expect(darkest(x, y), `a line at ${x}, ${y}`).toBeLessThan(160);
    for (const [x, y] of [
      [-210, 0],
      [100, 0],
      [-150, 60],
      [210, 110],
    ] as const)
      expect(darkest(x, y), `nothing at ${x}, ${y}`).toBe(255);
    const { data } = ground.getImageData(70 * 4, 105 * 4, 100 * 4, 20 * 4);
    expect(Math.min(...data.filter((_, i) => i % 4 < 3))).toBeLessThan(120);
  });
});
