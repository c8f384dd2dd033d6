import { describe, expect, test } from 'vitest';
import { cost } from '../../../calc/cost/cost.figure.ts';
import { layerCost } from '../../../calc/cost/price.figure.ts';
import { Bench, counters } from '../../../calc/figure/bench.ts';
import { layerMass, mass } from '../../../calc/laminate/mass.figure.ts';
import { layerThickness } from '../../../calc/laminate/thickness.figure.ts';
import type { Material } from '../../../calc/model/index.ts';
import { DENSITY } from '../../../calc/quantity/index.ts';
import { reportOf } from '../../../calc/report.ts';
import { airPressure } from '../../../calc/vacuum/vacuum.figure.ts';
import { amount, bookOf, bookWith, fact, materialNamed, price, SHOP, SLED } from '../../harness/sled-model.ts';
import { valueOf } from './ask.ts';

/** How many figures are computed while something runs. */
function computed(run: () => void): number {
  const before = counters.computed;
  run();
  return counters.computed - before;
}

/** The same material, read anew from the text: nothing of it is the same object. */
const again = (material: Material): Material => structuredClone(material);
const dearer = (name: string): Material => ({ ...again(materialNamed(name)), prices: [price(name, 99, 'area')] });

describe('the memo', () => {
  test('asking twice computes once', () => {
    const on = new Bench(SLED, bookOf());
    expect(computed(() => on.ask(mass))).toBeGreaterThan(20);
    expect(computed(() => on.ask(mass))).toBe(0);
    expect(computed(() => on.ask(layerMass, 'outer'))).toBe(0);
  });
  test('a second report of the same recipe and book computes nothing', () => {
    const recipe = { ...SLED };
    const book = bookOf();
    expect(computed(() => reportOf(recipe, book))).toBeGreaterThan(100);
    expect(computed(() => reportOf(recipe, book))).toBe(0);
  });
  test('another book that says the same computes nothing', () => {
    const on = new Bench(SLED, bookOf());
    on.ask(cost);
    on.moveTo(bookWith(again(materialNamed('triax_680')), again(materialNamed('e_glass'))));
    expect(computed(() => on.ask(cost))).toBe(0);
  });
  test('a changed price recomputes costs and nothing else', () => {
    const on = new Bench(SLED, bookOf());
    const before = valueOf(on.ask(cost));
    on.ask(mass);
    on.moveTo(bookWith(dearer('triax_680')));
    expect(computed(() => on.ask(mass))).toBe(0);
    expect(computed(() => on.ask(layerCost, 'keel'))).toBe(0);
    const names = computed(() => on.ask(cost));
    // layer_cost of the two plies, material_cost, cost_of_part, cost
    expect(names).toBe(5);
    expect(valueOf(on.ask(cost))).toBeGreaterThan(before + 50);
  });
  test('a changed fibre recomputes what is made of it', () => {
    const on = new Bench(SLED, bookOf());
    const before = valueOf(on.ask(layerThickness, 'outer'));
    on.ask(layerThickness, 'keel');
    on.moveTo(
      bookWith({ ...materialNamed('e_glass'), density: fact('material/e_glass', 'density', amount(2500, DENSITY)) }),
    );
    expect(computed(() => on.ask(layerThickness, 'keel'))).toBe(0);
    expect(computed(() => on.ask(layerThickness, 'outer'))).toBeGreaterThan(0);
    expect(valueOf(on.ask(layerThickness, 'outer'))).toBeCloseTo((before * 2560) / 2500, 12);
  });
  test('a figure that could not be told is told when the material comes', () => {
    const on = new Bench(SLED, bookOf([]));
    expect('cannot' in on.ask(mass)).toBe(true);
    on.moveTo(bookOf());
    expect(valueOf(on.ask(mass))).toBeGreaterThan(2);
  });
  test('another shop recomputes the air, not the mass', () => {
    const on = new Bench(SLED, bookOf());
    on.ask(mass);
    on.ask(airPressure);
    on.moveTo(bookOf(undefined, { ...SHOP, elevation: undefined }));
    expect(valueOf(on.ask(airPressure))).toBe(101_325);
    expect(computed(() => on.ask(layerThickness, 'outer'))).toBe(0);
  });
});
