import { describe, expect, test } from 'vitest';
import { lineLength } from '../../../calc/bag/bag.figure.ts';
import { layerPiece } from '../../../calc/cloth/area.figure.ts';
import { wrapReach } from '../../../calc/cloth/wrap.figure.ts';
import { consumableCost, cost, labourCost, materialCost, mouldCost } from '../../../calc/cost/cost.figure.ts';
import { layerCost } from '../../../calc/cost/price.figure.ts';
import { isCannot, isNotYet } from '../../../calc/figure/index.ts';
import { layerMass, mass } from '../../../calc/laminate/mass.figure.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import type { Layer, Recipe } from '../../../calc/model/index.ts';
import { partArea } from '../../../calc/outline/part.figure.ts';
import { layPlan } from '../../../calc/plan/lay.figure.ts';
import { reportOf } from '../../../calc/report.ts';
import { mixSplit } from '../../../calc/resin/batches.figure.ts';
import { gelTime } from '../../../calc/resin/time.figure.ts';
import { laidLayer, laidStack } from '../../../calc/stack/laid.figure.ts';
import { airPressure, pumpLeaves } from '../../../calc/vacuum/vacuum.figure.ts';
import {
  bookOf,
  bookWith,
  MATERIALS,
  materialNamed,
  mbar,
  price,
  SHOP,
  SLED,
  SLED_LAYERS,
  step,
} from '../../harness/sled-model.ts';
import { bench, missing, valueOf } from './ask.ts';

const change = (name: string, more: Partial<Layer>): Recipe => ({
  ...SLED,
  stack: {
    path: 'stack',
    from: 'tool',
    tool: 'sled_tool',
    items: SLED_LAYERS.map((l) => (l.name === name ? { ...l, ...more } : l)),
  },
});
const without = (...names: readonly string[]) => bookOf(MATERIALS.filter((m) => !names.includes(m.name)));

const NOTHING = { ...bookOf([], SHOP, []), shop: undefined };

describe('what is missing is said, with its place', () => {
  test('a price that is known to be unknown', () => {
    const on = bench(
      SLED,
      bookWith({ ...materialNamed('triax_680'), prices: [price('triax_680', 'unknown', 'area')] }),
    );
    expect(missing(on.ask(layerCost, 'outer'))).toEqual([
      'the price of triax_680 is not known (?) @ material/triax_680 price',
    ]);
    expect(missing(on.ask(cost))).toEqual(['the price of triax_680 is not known (?) @ material/triax_680 price']);
    expect(valueOf(on.ask(mass))).toBeGreaterThan(2);
  });
  test('a price that is not given, each thing once', () => {
    const on = bench(
      SLED,
      bookWith(
        { ...materialNamed('triax_680'), prices: undefined },
        { ...materialNamed('foam_80'), prices: undefined },
      ),
    );
    expect(missing(on.ask(materialCost))).toEqual([
      'the price of triax_680 is not given @ material/triax_680 price',
      'the price of foam_80 is not given @ material/foam_80 price',
    ]);
  });
  test('a price in another currency is not converted', () => {
    const dollars = price('triax_680', 7.4, 'area');
    if (dollars.value === 'unknown') throw new Error('a price');
    const inDollars = { ...dollars, value: { ...dollars.value, amount: { ...dollars.value.amount, currency: 'USD' } } };
    const on = bench(SLED, bookWith({ ...materialNamed('triax_680'), prices: [inDollars] }));
    expect(missing(on.ask(layerCost, 'inner'))).toEqual([
      'the price of triax_680 is in USD, the costs of the shop are in EUR @ material/triax_680 price',
    ]);
  });
  test('a material that nobody has: its own layers cannot be told, the others can', () => {
    const on = bench(SLED, without('biax_440'));
    expect(missing(on.ask(layerMass, 'pad'))).toEqual([
      'nothing among the materials is called biax_440 @ recipe/sled_deck stack.4',
    ]);
    expect(valueOf(on.ask(layerMass, 'inner'))).toBeGreaterThan(0.4);
    expect(isCannot(on.ask(mass))).toBe(true);
  });
  test('a cloth without resin density still has a thickness where its fraction is by volume', () => {
    const on = bench(SLED, bookWith({ ...materialNamed('epoxy_slow'), density: undefined }));
    expect(valueOf(on.ask(layerThickness, 'outer'))).toBeGreaterThan(0);
    expect(missing(on.ask(layerMass, 'outer'))).toEqual([
      'the density of epoxy_slow is not given @ material/epoxy_slow density',
    ]);
  });
  test('a thickness left out stops what hangs on it and nothing else', () => {
    const on = bench(change('body', { thickness: undefined }));
    expect(missing(on.ask(wrapReach, 'outer'))).toEqual([
      'the thickness of body is not given @ recipe/sled_deck stack.2',
    ]);
    expect(missing(on.ask(mass))).toEqual(['the thickness of body is not given @ recipe/sled_deck stack.2']);
    expect(valueOf(on.ask(layerMass, 'inner'))).toBeGreaterThan(0);
  });
  test('a wrap onto nothing, onto an unknown layer, and by an unknown landing', () => {
    const wrap = (more: object) =>
      missing(bench(change('outer', { extent: { kind: 'wrap', way: 'onto', ...more } })).ask(wrapReach, 'outer'));
    expect(wrap({})).toEqual(['it is not said what outer lands on @ recipe/sled_deck stack.0']);
    expect(wrap({ target: 'hull' })).toEqual(['no layer is called hull @ recipe/sled_deck stack.0']);
    expect(wrap({ target: 'body', landing: 'unknown' })).toEqual([
      'the landing of outer is not known (?) @ recipe/sled_deck stack.0',
    ]);
  });
  test('an outline that cannot be, one that draws nothing, and none', () => {
    const part = (outline: NonNullable<Recipe['part']>['outline']): Recipe => ({
      ...SLED,
      part: { path: 'part', cutouts: [], zones: [], outline },
    });
    expect(missing(bench(part({ kind: 'rounded', length: 1, width: 0.4, corner: 0.3 })).ask(partArea))).toEqual([
      'the corner radius is more than half the shorter side @ recipe/sled_deck part.outline',
    ]);
    expect(missing(bench(part(undefined)).ask(partArea))).toEqual([
      'the outline of the part is not given @ recipe/sled_deck part.outline',
    ]);
    const drawn = bench(part({ kind: 'path', data: 'M0 0' })).ask(partArea);
    expect(missing(drawn)).toEqual(['the drawing holds no curves @ recipe/sled_deck part.outline']);
    expect(isNotYet(drawn)).toBe(false);
  });
  test('a place at an end that nobody named', () => {
    const recipe: Recipe = {
      ...SLED,
      part: { ...(SLED.part ?? { path: 'part', cutouts: [], zones: [] }), ends: undefined },
    };
    expect(missing(bench(recipe).ask(layerMass, 'pad'))).toContain(
      'no end of the part is called heel @ recipe/sled_deck part.mount',
    );
    expect(missing(bench(recipe).ask(lineLength, 'process.8'))).toEqual([
      'no end of the part is called heel @ recipe/sled_deck process.8',
    ]);
  });
  test('no shop: no wage; masses and material stay, prices are taken as they are', () => {
    const on = bench(SLED, { ...bookOf(), shop: undefined });
    expect(missing(on.ask(labourCost))).toEqual(['the labour rate of the shop is not given @ shop labour']);
    expect(valueOf(on.ask(materialCost))).toBeGreaterThan(50);
    expect(valueOf(on.ask(airPressure))).toBe(101_325);
    expect(missing(on.ask(pumpLeaves))).toEqual(['what the pump leaves is not given @ shop pump']);
  });
  test('a pump that is not said absolute or gauge', () => {
    const shop = { ...SHOP, pump: { value: mbar(15), at: { entry: 'shop', path: 'pump' } } };
    expect(missing(bench(SLED, bookOf(MATERIALS, shop)).ask(pumpLeaves))).toEqual([
      '1500 is not said absolute or gauge @ shop pump',
    ]);
  });
  test('a tool that nobody has; one without a cost costs nothing and says so', () => {
    expect(missing(bench(SLED, bookOf(MATERIALS, SHOP, [])).ask(mouldCost))).toEqual([
      'nothing among the tools is called sled_tool @ recipe/sled_deck stack',
    ]);
    const free = bench(
      SLED,
      bookOf(MATERIALS, SHOP, [{ entry: 'tool/sled_tool', name: 'sled_tool', origin: 'workspace' }]),
    ).ask(mouldCost);
    expect(valueOf(free)).toBe(0);
    expect(JSON.stringify(free)).toContain('states no cost');
  });
  test('a resin without its mix, its gel time', () => {
    const on = bench(SLED, bookWith({ ...materialNamed('epoxy_slow'), mix: undefined, gel: undefined }));
    expect(missing(on.ask(mixSplit, ''))).toEqual([
      'the mix ratio of epoxy_slow is not given @ material/epoxy_slow mix',
    ]);
    expect(missing(on.ask(gelTime, ''))).toEqual(['the gel time of epoxy_slow is not given @ material/epoxy_slow gel']);
  });
  test('one unknown consumable price stops the consumables, not the material', () => {
    const on = bench(SLED, bookWith({ ...materialNamed('film_50'), prices: [price('film_50', 'unknown', 'area')] }));
    expect(missing(on.ask(consumableCost))).toEqual(['the price of film_50 is not known (?) @ material/film_50 price']);
    expect(valueOf(on.ask(materialCost))).toBeGreaterThan(50);
  });
  test('layers, stacks and processes that are not there', () => {
    expect(missing(bench(SLED).ask(laidLayer, 'nobody'))).toEqual([
      'no layer is called nobody @ recipe/sled_deck stack',
    ]);
    expect(missing(bench({ ...SLED, stack: undefined }).ask(mass))).toEqual([
      'the stack is not given @ recipe/sled_deck',
    ]);
    expect(missing(bench({ ...SLED, process: undefined }).ask(layPlan))).toEqual([
      'the process is not given @ recipe/sled_deck',
    ]);
    expect(missing(bench({ ...SLED, stack: { path: 'stack', items: [] } }).ask(mass))).toEqual([
      'the stack has no layers @ recipe/sled_deck stack',
    ]);
    const many = { kind: 'repeat' as const, path: 'stack.0', times: 1e9, items: SLED_LAYERS };
    expect(missing(bench({ ...SLED, stack: { path: 'stack', items: [many] } }).ask(laidStack))).toEqual([
      'the stack would have 6000000000 layers; more than 2000 are not worked out @ recipe/sled_deck stack',
    ]);
  });
  test('a ply of something that is no cloth', () => {
    expect(missing(bench(change('inner', { material: 'foam_80' })).ask(layerThickness, 'inner'))[0]).toContain(
      'what foam_80 is woven or stitched of is not given',
    );
  });
  test('a coat has no piece', () => {
    const coat = change('inner', { kind: 'coat', material: 'epoxy_slow' });
    expect(isCannot(bench(coat).ask(layerPiece, 'inner'))).toBe(true);
  });
});

describe('a report never throws', () => {
  test('of an empty recipe, of one without a book, of steps that say nothing', () => {
    const empty: Recipe = { entry: 'recipe/x', name: 'x', sizes: [], quantity: 1, lets: {}, loads: [], expects: [] };
    expect(reportOf(empty, NOTHING).layers).toEqual([]);
    const report = reportOf({ ...SLED, expects: [] }, NOTHING);
    expect(report.layers.length).toBe(6);
    const verbs = [
      'clean',
      'release',
      'tape',
      'kit',
      'tack',
      'lay',
      'peel',
      'mesh',
      'feed',
      'vent',
      'bag',
      'leak test',
      'infuse',
      'cure',
      'wait',
      'hold',
      'ramp',
      'drill',
      'tint',
      'do',
      'dance',
    ];
    const bare: Recipe = {
      ...SLED,
      process: { path: 'process', steps: verbs.map((verb, i) => step(`process.${i}`, verb)) },
    };
    expect(reportOf(bare, bookOf()).steps.length).toBe(verbs.length);
  });
});
