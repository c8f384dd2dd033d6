import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Book, Layer, Material, Outline, Recipe, StackItem, Step } from '../../../calc/model/index.ts';
import { LENGTH, NUMBER, TIME } from '../../../calc/quantity/index.ts';
import { type Report, reportOf } from '../../../calc/report.ts';
import {
  amount,
  bookOf,
  clause,
  MATERIALS,
  SHOP,
  SLED,
  SLED_LAYERS,
  SLED_STEPS,
  said,
} from '../../harness/sled-model.ts';

/** Every number that anything of a report holds, its words too; what was typed left out. */
function* numbers(value: unknown, path = ''): Generator<readonly [string, number]> {
  if (typeof value === 'number') yield [path, value];
  else if (typeof value === 'object' && value !== null) {
    for (const [key, part] of Object.entries(value)) {
      if (key !== 'laid' && key !== 'step' && key !== 'expectation' && key !== 'dimension')
        yield* numbers(part, `${path}.${key}`);
    }
  }
}

function expectFinite(report: Report): void {
  const bad = [...numbers(report)].filter(([, value]) => !Number.isFinite(value));
  expect(bad).toEqual([]);
}

const odd = fc.oneof(
  fc.constantFrom(0, -1, 1e-300, 1e300, 5e-324, Number.MAX_VALUE),
  fc.double({ min: 0.0001, max: 10, noNaN: true }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

const outlines: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({ kind: fc.constant('rectangle' as const), length: odd, width: odd }),
  fc.record({ kind: fc.constant('rounded' as const), length: odd, width: odd, corner: odd }),
  fc.record({ kind: fc.constant('circle' as const), diameter: odd }),
  fc.record({ kind: fc.constant('ellipse' as const), length: odd, width: odd }),
  fc.record({ kind: fc.constant('capsule' as const), length: odd, width: odd }),
  fc.record({
    kind: fc.constant('polygon' as const),
    points: fc.array(fc.record({ x: odd, y: odd }), { maxLength: 6 }),
  }),
);

/** Every number in a piece of the model replaced by an odd one with some chance. */
function shaken<T>(data: T, draw: (value: number) => number): T {
  if (typeof data === 'number') return draw(data) as T;
  if (Array.isArray(data)) return data.map((part) => shaken(part, draw)) as T;
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(
    Object.entries(data).map(([key, part]) => [key, key === 'dimension' ? part : shaken(part, draw)]),
  ) as T;
}

/** Draws from a list of odd numbers in turn; most numbers stay. */
const drawing = (list: readonly (number | undefined)[]) => {
  let i = 0;
  return (value: number): number => list[i++ % list.length] ?? value;
};
const draws = fc.array(fc.option(odd, { freq: 6, nil: undefined }), { minLength: 17, maxLength: 41 });

const layers: fc.Arbitrary<StackItem> = fc
  .tuple(fc.constantFrom(...SLED_LAYERS), odd, odd, fc.constantFrom('net', 'to trim', 'wrap', 'zone'))
  .map(([layer, a, b, kind]): Layer => {
    const extent: Layer['extent'] =
      kind === 'wrap'
        ? { kind, way: 'onto', target: 'body', landing: amount(a, LENGTH) }
        : kind === 'zone'
          ? { kind, zone: 'mount' }
          : kind === 'net'
            ? { kind, typed: true }
            : { kind: 'to trim' };
    return {
      ...layer,
      extent: layer.extent.kind === 'net' ? extent : layer.extent,
      oversize: amount(b, LENGTH),
      drop: { by: amount(a, LENGTH), end: 'heel' },
      thickness: layer.thickness === undefined ? undefined : amount(b, LENGTH),
    };
  });
const stacks: fc.Arbitrary<readonly StackItem[]> = fc.array(
  fc.oneof(
    { arbitrary: layers, weight: 5 },
    { arbitrary: fc.constant<StackItem>({ kind: 'mirror', path: 'stack.m' }), weight: 1 },
    {
      arbitrary: fc.tuple(fc.integer({ min: -1, max: 9 }), odd, fc.array(layers, { maxLength: 3 })).map(
        ([times, by, items]): StackItem => ({
          kind: 'repeat',
          path: 'stack.r',
          times,
          items,
          drop: { by: amount(by, LENGTH) },
          stagger: amount(by, LENGTH),
        }),
      ),
      weight: 1,
    },
  ),
  { maxLength: 7 },
);
const steps: fc.Arbitrary<readonly Step[]> = fc.shuffledSubarray([...SLED_STEPS]).chain((some) =>
  fc.tuple(fc.constant(some), odd).map(([list, n]) =>
    list.map((s) => ({
      ...s,
      clauses: [
        ...s.clauses,
        clause('amount', [said(amount(n, TIME))]),
        clause('amount', [said(amount(n, NUMBER, { unit: 'coats' }))]),
      ],
    })),
  ),
);

describe('every figure is a finite number or says why there is none', () => {
  test('of any outline', () => {
    fc.assert(
      fc.property(outlines, (outline) =>
        expectFinite(
          reportOf(
            { ...SLED, part: { ...(SLED.part ?? { path: 'part', cutouts: [], zones: [] }), outline } },
            bookOf(),
          ),
        ),
      ),
      { numRuns: 80 },
    );
  });
  test('of any stack and process', () => {
    fc.assert(
      fc.property(stacks, steps, fc.constantFrom('hand', 'bagged', 'infusion', 'prepreg'), (items, list, kind) => {
        const process = { path: 'process', kind: kind as 'hand', resin: 'epoxy_slow', steps: list };
        expectFinite(reportOf({ ...SLED, stack: { path: 'stack', tool: 'sled_tool', items }, process }, bookOf()));
      }),
      { numRuns: 80 },
    );
  });
  test('of materials, a shop and a recipe with absurd values', () => {
    fc.assert(
      fc.property(draws, draws, (inBook, inRecipe) => {
        const draw = drawing(inBook);
        const book: Book = bookOf(
          MATERIALS.map((m): Material => shaken(m, draw)),
          shaken(SHOP, draw),
        );
        expectFinite(reportOf(shaken(SLED, drawing(inRecipe)) as Recipe, book));
      }),
      { numRuns: 80 },
    );
  });
});
