import { describe, expect, it } from 'vitest';
import { readDxf } from '../../../calc/read-drawing/dxf/read-dxf.ts';
import { blocks, entities, mm, pairs, sled } from './dxf-pairs.ts';
import { boxOf, picked, problemsOf } from './said.ts';

describe('a DXF drawing from somewhere else', () => {
  it('takes what is frozen, switched off or not shown for hidden, whatever the capitals of its layer', () => {
    const layer = (name: string, state: number, color: number) => [0, 'LAYER', 2, name, 70, state, 62, color] as const;
    const source =
      mm +
      pairs(0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LAYER', ...layer('OLD', 0, -7), ...layer('Ice', 1, 7)) +
      pairs(0, 'ENDTAB', 0, 'ENDSEC') +
      blocks(0, 'BLOCK', 2, 'B', 10, 0, 20, 0, 0, 'CIRCLE', 8, 'Holes', 10, 0, 20, 0, 40, 7, 0, 'ENDBLK') +
      entities(
        ...sled,
        ...[0, 'CIRCLE', 8, 'old', 10, 0, 20, 0, 40, 5],
        ...[0, 'INSERT', 8, 'Ice', 2, 'B', 10, 0, 20, 0],
        ...[0, 'CIRCLE', 8, 'Cut', 60, 1, 10, 0, 20, 0, 40, 3],
      );
    const drawing = readDxf(source);
    expect(boxOf(picked(drawing).curve)).toEqual([0, 0, 1180, 420]);
    expect(boxOf(picked(drawing, { layer: 'Holes' }).curve)).toEqual([-7, -7, 7, 7]);
  });

  it('passes by what stands behind the end of the file', () => {
    const whole = mm + entities(...sled);
    for (const behind of ['\u001a', '\r\n\r\n', 'made by hand\n'])
      expect(problemsOf(readDxf(whole + behind)), JSON.stringify(behind)).toEqual([]);
  });

  it('keeps the corners of a spline: at a knot that stands as often as the degree', () => {
    // degree 1 is the polygon of its control points
    const knots = [0, 0, 1, 2, 3, 3].flatMap((k) => [40, k]);
    const points = [10, 0, 20, 0, 10, 100, 20, 0, 10, 100, 20, 50, 10, 0, 20, 0];
    const { contour } = picked(readDxf(mm + entities(0, 'SPLINE', 8, 0, 70, 8, 71, 1, ...knots, ...points)));
    expect(contour.map(({ x, y, bulge }) => [Math.round(x * 1e6) / 1e3, Math.round(y * 1e6) / 1e3, bulge])).toEqual([
      [0, 0, undefined],
      [100, 0, undefined],
      [100, 50, undefined],
    ]);
    // two cubics that meet in a corner at (100, 50): no arc stands there for it
    const pair = [0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2].flatMap((k) => [40, k]);
    const bent = [0, 0, 0, 100, 100, 100, 100, 50, 150, 40, 150, 0, 0, 0].flatMap((v, i) => [i % 2 === 0 ? 10 : 20, v]);
    const shape = picked(readDxf(mm + entities(0, 'SPLINE', 8, 0, 70, 8, 71, 3, ...pair, ...bent))).contour;
    const shortest = Math.min(
      ...shape.map((v, i) =>
        Math.hypot(v.x - shape[(i + 1) % shape.length]!.x, v.y - shape[(i + 1) % shape.length]!.y),
      ),
    );
    expect(shortest).toBeGreaterThan(0.5e-3);
  });
});
