/** The small chart of a quantity over the builds: what it must not make look worse than it is, and that it can be read. */
import { describe, expect, it } from 'vitest';
import type { DrawnItem } from '../../../calc/drawing/drawing.ts';
import { individualsLimits } from '../../../calc/record/control.ts';
import { buildQuantities, type Series } from '../../../language/view/records/builds.ts';
import { chartOf } from '../../../language/view/records/chart.ts';
import { plainStyle } from '../../../language/view/text.ts';

function series(name: string, values: readonly number[], plan?: number): Series {
  const kind = buildQuantities.find((each) => each.name === name);
  if (kind === undefined) throw new Error(`no quantity ${name}`);
  const points = values.map((value, i) => ({
    record: { entry: `build-${i}`, title: `no. ${i + 1}`, date: '2026-03-02', lots: [], readings: [] },
    value,
    ...(plan === undefined ? {} : { plan }),
  }));
  const limits = individualsLimits(values);
  return { kind, points, ...('mean' in limits ? { limits } : {}) };
}

const textsOf = (items: readonly DrawnItem[]) => items.filter((item) => item.kind === 'text');

describe('a chart of builds', () => {
  it('does not make a rounding of the balance look like a leap', () => {
    const { items, high } = chartOf(series('resin', [1.7, 1.7, 1.7, 1.7], 1.696), plainStyle);
    const ring = items.find((item) => item.kind === 'circle');
    const plan = items.find((item) => item.kind === 'line' && item.layer === 'core');
    if (ring?.kind !== 'circle' || plan?.kind !== 'line') throw new Error('no ring or no plan');
    expect(Math.abs(ring.centre.y - (plan.points[0]?.y ?? 0))).toBeLessThan(0.1 * high.y);
  });

  it('shows a value far off over its whole height', () => {
    const { items, high } = chartOf(series('mass', [2, 2, 2, 2, 2, 2, 2, 2, 2, 3], 2), plainStyle);
    const rings = items.filter((item) => item.kind === 'circle').map(({ centre }) => centre.y);
    expect(Math.max(...rings) - Math.min(...rings)).toBeGreaterThan(0.5 * high.y);
  });

  it.each([
    ['mass', [2.157, 2.16, 2.15, 2.158], 2.157],
    ['resin', [1.7, 1.7, 1.7], 1.7],
    ['fill', [300, 301, 299, 300], undefined],
    ['leak', [0, 0, 0], 0],
  ] as const)('writes its words clear of each other: %s', (name, values, plan) => {
    const { items, high } = chartOf(series(name, [...values], plan), plainStyle);
    const words = textsOf(items).filter((item) => item.anchor === undefined);
    const heights = words.map(({ at }) => at.y).sort((a, b) => a - b);
    expect(words.map(({ text }) => text).join()).toMatch(/mean .*\d/);
    for (const [i, y] of heights.slice(1).entries())
      expect(y - (heights[i] ?? 0)).toBeGreaterThan(words[0]?.height ?? 0);
    expect(heights.at(-1) ?? 0).toBeLessThan(high.y);
  });

  it('numbers as many builds as there is room for', () => {
    const { items } = chartOf(
      series(
        'mass',
        Array.from({ length: 400 }, (_, i) => 2 + (i % 7) / 100),
      ),
      plainStyle,
    );
    const ticks = textsOf(items).filter((item) => item.anchor === 'middle');
    expect(ticks.length).toBeGreaterThan(5);
    for (const [i, tick] of ticks.slice(1).entries()) {
      const letters = tick.text.length * tick.height * 0.65;
      expect(tick.at.x - (ticks[i]?.at.x ?? 0)).toBeGreaterThan(letters);
    }
  });
});
