import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shapePerimeter } from '../../../calc/outline/measure.ts';
import { type Stretch, turns } from '../../../calc/outline/turns.ts';
import { expectWithin, valueOf } from '../outcomes.ts';
import { convexShape, ell, square, star } from './shapes.ts';

const sum = (stretches: readonly Stretch[], of: (s: Stretch) => number) => stretches.reduce((s, t) => s + of(t), 0);

describe('the stretches of an outline', () => {
  it('turn by 2 pi in all and are as long as the perimeter', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), (shape) => {
        const stretches = valueOf(turns(shape));
        expectWithin(
          sum(stretches, (s) => s.turn),
          2 * Math.PI,
          1e-9,
        );
        expectWithin(
          sum(stretches, (s) => s.length),
          valueOf(shapePerimeter(shape)),
          1e-6,
        );
      }),
    );
  });

  it('follow each other without a gap and close', () => {
    fc.assert(
      fc.property(fc.oneof(convexShape, star), (shape) => {
        const stretches = valueOf(turns(shape));
        stretches.forEach((stretch, i) => {
          const next = stretches[(i + 1) % stretches.length];
          expect(Math.hypot(stretch.to.x - (next?.from.x ?? 0), stretch.to.y - (next?.from.y ?? 0))).toBeLessThan(1e-9);
        });
      }),
    );
  });

  it('are those that a hand would draw', () => {
    const kinds = (shape: Parameters<typeof turns>[0]) => valueOf(turns(shape)).map((s) => s.kind);
    expect(kinds(square(1))).toEqual(Array(4).fill(['straight', 'corner']).flat());
    expect(kinds({ kind: 'rounded', length: 2, width: 1, corner: 0.2 })).toEqual(
      Array(4).fill(['straight', 'arc']).flat(),
    );
    expect(kinds({ kind: 'capsule', length: 3, width: 1 })).toEqual(['arc', 'straight', 'arc', 'straight']);
    expect(kinds({ kind: 'circle', diameter: 1 })).toEqual(['arc']);
    expect(valueOf(turns({ kind: 'capsule', length: 1, width: 3 }))[1]).toMatchObject({ turn: Math.PI, radius: 0.5 });
    expect(valueOf(turns(ell)).filter((s) => s.turn < 0)).toMatchObject([{ kind: 'corner', from: { x: 0.4, y: 0.4 } }]);
  });
});
