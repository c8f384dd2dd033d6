/** A section of many plies on paper: the plies are told apart, the lines do not make one black of them. */
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { sectionOf } from '../../../calc/drawing/section/section.ts';
import { Bench } from '../../../calc/figure/bench.ts';
import { drawingPdf } from '../../../language/export/pdf/index.ts';
import { screenSvg } from '../../../language/export/svg.ts';
import { valueOf } from '../../calc/figures/ask.ts';
import { bookOf, deg, layer, SLED } from '../../harness/sled-model.ts';
import { root } from '../../harness/sources.ts';
import { readPdf } from './read-pdf.ts';

const resolution = 300;

/** How much of each column of a page is dark, as a share of what lies between its first and its last dark point. */
async function darkness(name: string, from: number, to: number): Promise<number> {
  const image = await loadImage(path.join(root, 'tests/out/pdf', `${name}-1.png`));
  const canvas = createCanvas(image.width, image.height);
  const ground = canvas.getContext('2d');
  ground.drawImage(image, 0, 0);
  const shares: number[] = [];
  for (let x = Math.round(from * image.width); x < to * image.width; x += 20) {
    const { data } = ground.getImageData(x, Math.round(0.2 * image.height), 1, Math.round(0.6 * image.height));
    const dark = Array.from({ length: data.length / 4 }, (_, i) => 1 - (data[4 * i] ?? 255) / 255);
    const [first, last] = [dark.findIndex((d) => d > 0.3), dark.findLastIndex((d) => d > 0.3)];
    const within = dark.slice(first, last + 1);
    shares.push(within.reduce((sum, d) => sum + d, 0) / within.length);
  }
  return shares.sort((a, b) => a - b)[shares.length >> 1] ?? Number.NaN;
}

describe('a section on paper', () => {
  for (const count of [20, 60, 150])
    it(`shows ${count} plies one by one: no line is wider than a third of a ply`, async () => {
      const plies = Array.from({ length: count }, (_, i) =>
        layer('ply', `p${i}`, 'biax_440', `stack.${i}`, { angle: deg(0), extent: { kind: 'net', typed: true } }),
      );
      const bench = new Bench({ ...SLED, stack: { ...SLED.stack!, items: plies } }, bookOf());
      const drawing = valueOf(sectionOf(bench, () => 'x'));
      const name = `section-${count}`;
      // on a screen 800 points wide a line keeps its width or, where that is more than a third of a ply, takes that third
      const ply = ((drawing.thinnest ?? 0) * 1000) / 3;
      const svg = screenSvg(drawing);
      const usual = (1.2 / 800) * Number(/viewBox="0 0 ([\d.]+)/.exec(svg)?.[1]);
      const stroke = /data-layer="cloth" stroke-width="([\d.]+)"><path [^>]*class="shape closed fine"/.exec(svg)?.[1];
      expect(Number(stroke ?? usual)).toBeLessThanOrEqual(ply * 1.001);
      expect(stroke === undefined).toBe(usual <= ply);
      await readPdf((await drawingPdf(drawing, { paper: 'a4', scale: 'fit' })).bytes, name, resolution);
      expect(await darkness(name, 0.35, 0.65)).toBeLessThan(0.36);
    });
});
