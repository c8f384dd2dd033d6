import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cloth, Layer, StackItem } from '../../../calc/model/index.ts';
import { laidDirections, mirrorTurn } from '../../../calc/stack/directions.ts';
import { countLayers, expandStack, isMirrored, MOST_LAID_LAYERS } from '../../../calc/stack/expand.ts';
import { deg, fabric, layer, mm } from '../../harness/sled-model.ts';

const ply = (name: string, angle?: number, more: Partial<Layer> = {}): Layer =>
  layer('ply', name, 'cloth', `stack.${name}`, { ...(angle === undefined ? {} : { angle: deg(angle) }), ...more });
const mirror = (about?: string): StackItem => ({
  kind: 'mirror',
  path: 'stack.mirror',
  ...(about === undefined ? {} : { about }),
});
const repeat = (times: number | undefined, items: readonly StackItem[], more: object = {}): StackItem => ({
  kind: 'repeat',
  path: 'stack.repeat',
  items,
  ...(times === undefined ? {} : { times }),
  ...more,
});
const clothOf = (name: string, style: Cloth['style'], ...sheets: readonly (readonly [number, number])[]): Cloth => {
  const value = fabric(name, 'e_glass', style, sheets).cloth?.value;
  if (value === undefined || value === 'unknown') throw new Error('no cloth');
  return value;
};

const WOVEN = clothOf('woven', 'woven', [0, 100], [90, 100]);
const BIAX = clothOf('biax', 'stitched', [45, 220], [-45, 220]);
const TRIAX = clothOf('triax', 'stitched', [0, 280], [45, 200], [-45, 200]);
const CROSS = clothOf('cross', 'stitched', [0, 300], [90, 300]);

const expand = (items: readonly StackItem[], cloth: Cloth = WOVEN) =>
  expandStack({ path: 'stack', items }, () => cloth);
const names = (items: readonly StackItem[]) => expand(items).layers.map((l) => l.name);

describe('repeat', () => {
  test('copies are numbered and lie in order, with stagger, turn and drop growing', () => {
    const { layers } = expand([
      repeat(3, [ply('mat'), ply('roving', 0)], { stagger: mm(60), turn: deg(90), drop: { by: mm(20) } }),
    ]);
    expect(layers.map((l) => l.name)).toEqual(['mat.1', 'roving.1', 'mat.2', 'roving.2', 'mat.3', 'roving.3']);
    expect(layers.map((l) => l.stagger)).toEqual([0, 0, 0.06, 0.06, 0.12, 0.12]);
    expect(
      layers.filter((l) => l.layer.name === 'roving').map((l) => Math.round(((l.angle ?? -1) * 180) / Math.PI)),
    ).toEqual([0, 90, 180]);
    expect(layers.filter((l) => l.layer.name === 'mat').every((l) => l.angle === undefined)).toBe(true);
    expect(layers.map((l) => l.drop.around)).toEqual([0, 0, 0.02, 0.02, 0.04, 0.04]);
  });
  test('a drop at an end and one on a line add up by end', () => {
    const { layers } = expand([
      repeat(2, [ply('a', 0, { drop: { by: mm(10), end: 'tip' } })], { drop: { by: mm(120), end: 'tip' } }),
    ]);
    expect(layers[1]?.drop).toEqual({ around: 0, ends: { tip: 0.13 } });
    expect(layers[0]?.drop).toEqual({ around: 0, ends: {} });
  });
  test('in a repeat the outer number comes first', () => {
    expect(names([repeat(2, [repeat(2, [ply('a', 0)])])])).toEqual(['a.1.1', 'a.1.2', 'a.2.1', 'a.2.2']);
  });
  test('a count that is none lays the group once and says so', () => {
    for (const times of [undefined, 0, -1, 1.5, Number.NaN]) {
      const laid = expand([repeat(times, [ply('a', 0)])]);
      expect(laid.layers.map((l) => l.name)).toEqual(['a.1']);
      expect(laid.problems.map((p) => p.kind)).toEqual(['bad-repeat']);
    }
  });
  test('more layers than any part has are counted, not laid', () => {
    const laid = expand([repeat(1_000_000_000, [repeat(1_000_000_000, [ply('a', 0)])])]);
    expect(laid.layers).toEqual([]);
    expect(laid.problems).toEqual([{ kind: 'too-many-layers', path: 'stack', count: Number.MAX_SAFE_INTEGER }]);
    expect(expand([repeat(MOST_LAID_LAYERS, [ply('a', 0)])]).layers.length).toBe(MOST_LAID_LAYERS);
    expect(expand([repeat(MOST_LAID_LAYERS + 1, [ply('a', 0)])]).layers.length).toBe(0);
  });
  test('sixty mirrors one after the other are counted, not laid', () => {
    expect(expand([ply('a', 0), ...Array.from({ length: 60 }, () => mirror())]).problems[0]?.kind).toBe(
      'too-many-layers',
    );
  });
  test('two lines of one name have keys of their own', () => {
    expect(expand([ply('a', 0), ply('a', 90)]).layers.map((l) => [l.name, l.key])).toEqual([
      ['a', 'a'],
      ['a', 'a (2)'],
    ]);
  });
});

describe('mirror', () => {
  test('plies and strips come back in reverse', () => {
    expect(names([ply('a', 0), layer('strip', 's', 'cloth', 'stack.s'), ply('b', 90), mirror()])).toEqual([
      'a',
      's',
      'b',
      'b.m',
      's.m',
      'a.m',
    ]);
  });
  test('after a core the skin below is mirrored about it', () => {
    expect(names([ply('a', 0), ply('b', 90), layer('core', 'body', 'foam', 'stack.c'), mirror()])).toEqual([
      'a',
      'b',
      'body',
      'b.m',
      'a.m',
    ]);
  });
  test('about a ply has that ply once', () => {
    expect(names([ply('show', 0), ply('a', 45), ply('b', 0), mirror('b')])).toEqual([
      'show',
      'a',
      'b',
      'a.m',
      'show.m',
    ]);
  });
  test('coats, inserts, wraps and patches are laid once; a patch among them is told', () => {
    const laid = expand([
      layer('coat', 'gel', 'gelcoat', 'stack.gel'),
      ply('w', 0, { extent: { kind: 'wrap', way: 'onto', target: 'a' } }),
      ply('a', 0),
      layer('insert', 'i', 'ply', 'stack.i'),
      layer('patch', 'p', 'cloth', 'stack.p'),
      mirror(),
    ]);
    expect(laid.layers.map((l) => l.name)).toEqual(['gel', 'w', 'a', 'i', 'p', 'a.m']);
    expect(laid.problems).toEqual([{ kind: 'patch-not-mirrored', path: 'stack.mirror', name: 'p' }]);
  });
  test('in a group it mirrors the group only, and copies name their own original', () => {
    const laid = expand([ply('x', 0), repeat(2, [ply('a', 0), ply('b', 90), mirror()])]);
    expect(laid.layers.map((l) => l.name)).toEqual([
      'x',
      'a.1',
      'b.1',
      'b.1.m',
      'a.1.m',
      'a.2',
      'b.2',
      'b.2.m',
      'a.2.m',
    ]);
    expect(laid.layers.find((l) => l.name === 'a.2.m')?.mirrored?.of).toBe('a.2');
  });
  test('what cannot be mirrored about is told', () => {
    expect(expand([ply('a', 0), mirror('z')]).problems).toEqual([
      { kind: 'about-unknown', path: 'stack.mirror', name: 'z' },
    ]);
    expect(expand([ply('a', 0), ply('b', 0), ply('c', 0), mirror('b')]).problems).toEqual([
      { kind: 'layers-after-about', path: 'stack.mirror', name: 'c' },
    ]);
    expect(expand([mirror()]).problems).toEqual([{ kind: 'mirror-of-nothing', path: 'stack.mirror' }]);
  });
});

describe('the turn of a mirrored piece, sheet by sheet as ASTM D6507 counts a symmetric laminate', () => {
  const inDegrees = (angle: number) => Math.round((angle * 180) / Math.PI);
  test('woven and random cloth need nothing', () => {
    expect(mirrorTurn('a', WOVEN, 0.3, false)).toEqual({ of: 'a', turn: 0, over: false });
    expect(mirrorTurn('a', clothOf('mat', 'random', [0, 450]), 0, false)).toEqual({ of: 'a', turn: 0, over: false });
    expect(mirrorTurn('a', undefined, 0, false)).toEqual({ of: 'a', turn: 0, over: false });
  });
  test('stitched +-45 and 0/90 take a quarter turn', () => {
    for (const cloth of [BIAX, CROSS]) {
      const turn = mirrorTurn('a', cloth, 0, false);
      expect(Math.abs(inDegrees(turn.turn))).toBe(90);
      expect(turn.over).toBe(false);
      expect(turn.orphan).toBeUndefined();
    }
  });
  test('0/45/-45 has no mirror image by any turning', () => {
    const turn = mirrorTurn('a', TRIAX, 0, false);
    expect(turn.orphan?.wanted.map(inDegrees)).toEqual([135, 45, 0]);
    expect(turn.orphan?.got.map(inDegrees)).toEqual([0, 45, 135]);
  });
  test('turning +-45 over does nothing: it is the quarter turn that is meant', () => {
    const up = laidDirections(BIAX, 0, false);
    const over = laidDirections(BIAX, 0, true);
    expect(over.map((d) => inDegrees(d.angle ?? 0))).toEqual(up.map((d) => inDegrees(d.angle ?? 0)));
  });
  test('a +-45 of unequal sheets must be turned over as well', () => {
    const turn = mirrorTurn('a', clothOf('odd', 'stitched', [45, 220], [-45, 100]), 0, false);
    expect([turn.over, Math.abs(inDegrees(turn.turn)), turn.orphan]).toEqual([true, 90, undefined]);
  });
  test('the mirrored piece has the directions of the original in reverse', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -180, max: 180 }),
        fc.boolean(),
        fc.constantFrom(BIAX, CROSS),
        (degrees, turnedOver, cloth) => {
          const angle = (degrees * Math.PI) / 180;
          const turn = mirrorTurn('a', cloth, angle, turnedOver);
          const image = laidDirections(cloth, angle + turn.turn, turnedOver !== turn.over).map(
            (d) => inDegrees(d.angle ?? 0) % 180,
          );
          expect(image).toEqual(
            laidDirections(cloth, angle, turnedOver)
              .reverse()
              .map((d) => inDegrees(d.angle ?? 0) % 180),
          );
        },
      ),
    );
  });
});

const anyLayer = fc
  .record({
    kind: fc.constantFrom('ply', 'strip', 'patch', 'core', 'coat', 'insert'),
    name: fc.constantFrom('a', 'b', 'c', 'd'),
    angle: fc.integer({ min: -90, max: 90 }),
  })
  .map(
    ({ kind, name, angle }): StackItem =>
      layer(kind as Layer['kind'], name, 'cloth', `stack.${name}`, { angle: deg(angle) }),
  );
const { items } = fc.letrec<{ items: StackItem[]; item: StackItem }>((tie) => ({
  items: fc.array(tie('item'), { maxLength: 5 }),
  item: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    anyLayer,
    fc.constant(mirror()),
    fc.tuple(fc.integer({ min: 1, max: 4 }), tie('items')).map(([times, inside]) => repeat(times, inside)),
  ),
}));

describe('any stack', () => {
  test('has as many layers as are counted, keys that are unique, and positions in order', () => {
    fc.assert(
      fc.property(items, (stack) => {
        const laid = expand(stack, BIAX);
        if (laid.problems.some((p) => p.kind === 'too-many-layers')) return;
        expect(laid.layers.length).toBe(countLayers(stack).all);
        expect(new Set(laid.layers.map((l) => l.key)).size).toBe(laid.layers.length);
        expect(laid.layers.map((l) => l.index)).toEqual(laid.layers.map((_, i) => i));
      }),
    );
  });
  test('mirrored twice holds what can be mirrored four times, and its lines read the same from both sides', () => {
    fc.assert(
      fc.property(fc.array(anyLayer, { minLength: 1, maxLength: 6 }), (stack) => {
        const mirrorable = stack.filter(
          (item) => item.kind !== 'mirror' && item.kind !== 'repeat' && isMirrored(item),
        ).length;
        const laid = expand([...stack, mirror(), mirror()], BIAX);
        expect(laid.layers.length).toBe(stack.length + 3 * mirrorable);
        const lines = laid.layers.filter((l) => isMirrored(l.layer)).map((l) => l.layer.name);
        expect(lines).toEqual([...lines].reverse());
      }),
    );
  });
  test('a mirror of a mirror has the directions that it started from', () => {
    const laid = expand([ply('a', 30), mirror(), mirror()], BIAX);
    const directions = (i: number) =>
      laidDirections(BIAX, laid.layers[i]?.angle ?? 0, laid.layers[i]?.turnedOver ?? false).map((d) =>
        Math.round(((d.angle ?? 0) * 180) / Math.PI),
      );
    expect(laid.layers.map((l) => l.name)).toEqual(['a', 'a.m', 'a.m.m', 'a.m']);
    expect(directions(2)).toEqual(directions(0));
    expect(directions(1)).toEqual([...directions(0)].reverse());
  });
});
