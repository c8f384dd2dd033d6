import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../../calc/drawing/bounds.ts';
import type { DrawingLayer } from '../../../calc/drawing/drawing.ts';
import { withLeaders } from '../../../calc/drawing/plan/leaders.ts';
import { penOf, type Thing } from '../../../calc/drawing/plan/thing.ts';
import { text } from '../../../calc/figure/figure.ts';
import { plainStyle, show } from '../../../language/view/text.ts';

/** A stack seen from its edge, 1 m long, each layer 2 mm high. */
const stackOf = (kinds: readonly DrawingLayer[]): Thing[] =>
  kinds.map((layer, i) => {
    const source = { path: `stack.${i}`, name: `layer_${i}` };
    const [low, high] = [i * 0.002, (i + 1) * 0.002];
    const points = [
      { x: -0.5, y: low },
      { x: 0.5, y: low },
      { x: 0.5, y: high },
      { x: -0.5, y: high },
    ];
    const said = text('{name}', { name: source.name });
    return {
      layer,
      source,
      what: said,
      where: said,
      size: said,
      tag: said,
      items: [penOf(layer, source).line(points)],
    };
  });

const named = (kinds: readonly DrawingLayer[], height = 0.02) => {
  const things = stackOf(kinds);
  const box = boundsOf(things.flatMap(({ items }) => items));
  const say = (words: Parameters<typeof show>[0]) => show(words, plainStyle);
  const items = withLeaders(things, box, { say, height }, { apart: true }).flatMap((thing) => thing.items);
  return items.flatMap((item) => (item.kind === 'text' ? [item] : []));
};

const cloth = (n: number) => new Array<DrawingLayer>(n).fill('cloth');

describe('the names beside a stack', () => {
  it('stand each by itself where there is room', () => {
    const fromTop = named(cloth(12)).sort((a, b) => b.at.y - a.at.y);
    expect(fromTop.map(({ text }) => text)).toEqual(Array.from({ length: 12 }, (_, i) => `layer_${11 - i}`));
  });

  it('are fewer than the layers of a high stack, and say how many more there are; none is lost', () => {
    for (const height of [0.01, 0.02, 0.05]) {
      const names = named([...cloth(30), 'core', ...cloth(29)], height);
      // no taller than three quarters of the length, or six names
      const tall = Math.max(...names.map(({ at }) => at.y)) - Math.min(...names.map(({ at }) => at.y));
      expect(tall).toBeLessThanOrEqual(Math.max(0.75, 6 * 1.8 * height));
      const counted = names.map(({ text }) => 1 + Number(/and (\d+) more/.exec(text)?.[1] ?? 0));
      expect(counted.reduce((sum, n) => sum + n, 0)).toBe(60);
      // the core between the cloths has a name of its own
      expect(names.map(({ text }) => text)).toContain('layer_30');
      // from the top down, none nearer to the next than its letters are high
      const levels = names.map(({ at }) => at.y).sort((a, b) => b - a);
      for (const [i, y] of levels.slice(1).entries()) expect(levels[i]! - y).toBeGreaterThan(1.5 * height);
    }
  });

  it('are told apart by kind only where there are no more kinds than names', () => {
    const mixed = Array.from({ length: 60 }, (_, i): DrawingLayer => (i % 2 === 0 ? 'cloth' : 'core'));
    const counted = named(mixed).map(({ text }) => 1 + Number(/and (\d+) more/.exec(text)?.[1] ?? 0));
    expect(counted.reduce((sum, n) => sum + n, 0)).toBe(60);
    expect(Math.max(...counted)).toBeLessThanOrEqual(3);
  });
});
