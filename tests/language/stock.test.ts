import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isProblem, makeQuantity } from '../../calc/quantity/index.ts';
import type { Book, Fact, Material, MaterialFact } from '../../language/grammar/generated/ast.ts';
import { referenceAlike } from '../../language/view/reference/look-up.ts';
import { consumableKinds } from '../../language/words/consumable-kinds.ts';
import { parsed, viewServices } from './view/parsed.ts';

const folder = new URL('../../language/book/stock/', import.meta.url);
const services = viewServices();
const documents = readdirSync(folder).map((name) => ({
  name,
  document: parsed(services, readFileSync(new URL(name, folder), 'utf8')),
}));
const materials = documents.flatMap(({ document }) => (document.parseResult.value as Book).entries as Material[]);
const lines = materials.flatMap((material) =>
  material.items.map((item) => ({ material, item: item as Fact | MaterialFact })),
);
const named = (kind: string) => materials.filter((material) => material.kind === kind);
const textOf = (item: { $cstNode?: { text: string } }): string => item.$cstNode?.text.trim() ?? '';

/** The first number of a line, in SI. */
function valueOf(name: string, key: string): number {
  const line = lines.find(({ material, item }) => material.name === name && item.key === key);
  const typed = /(-?[\d.]+(?:e-?\d+)?) ([^\s,]+)/.exec(line === undefined ? '' : textOf(line.item));
  if (typed === null) throw new Error(`${name} says no ${key}`);
  const quantity = makeQuantity(Number(typed[1]), typed[2] as string);
  if (isProblem(quantity)) throw new Error(quantity.problem);
  return quantity.si;
}

describe('the stock library', () => {
  it.each(documents.map(({ name, document }) => [name, document] as const))(
    '%s is read without an error',
    (_name, document) => {
      expect(document.parseResult.lexerErrors).toEqual([]);
      expect(document.parseResult.parserErrors.map((error) => error.message)).toEqual([]);
    },
  );

  it('says of every number where it comes from', () => {
    const bare = lines.filter(
      ({ item }) =>
        /\d/.test(
          textOf(item)
            .replace(/"[^"]*"/g, '')
            .replace(item.key, ''),
        ) && !/, source ".+"$/.test(textOf(item)),
    );
    expect(
      bare
        .filter(({ item }) => !['from', 'fibre'].includes(item.key))
        .map(({ material, item }) => `${material.name}: ${textOf(item)}`),
    ).toEqual([]);
  });

  it('marks every price as a placeholder', () => {
    const prices = lines.filter(({ item }) => item.key === 'price');
    expect(prices.length).toBeGreaterThan(60);
    for (const { item } of prices)
      expect(textOf(item)).toMatch(/^price [\d.]+ EUR\/\w+( at \d+ mm)?, source "placeholder, replace by your own"$/);
  });

  it('gives every entry a name of its own and a title', () => {
    const names = materials.map((material) => material.name);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    expect(materials.filter((material) => material.title === undefined).map((material) => material.name)).toEqual([]);
  });

  it('names only materials that it holds itself', () => {
    const names = new Set(materials.map((material) => material.name));
    const referred = lines.flatMap(({ item }) =>
      item.$type === 'MaterialFact' && item.material !== undefined ? [item.material.$refText] : [],
    );
    expect(referred.length).toBeGreaterThan(30);
    expect(referred.filter((name) => !names.has(name))).toEqual([]);
  });

  it.each([
    ['fibre', 8],
    ['fabric', 24],
    ['prepreg', 2],
    ['catalyst', 2],
    ['paste', 2],
    ['core', 10],
    ['consumable', 24],
  ] as const)('holds enough to work with: %s', (kind, least) => {
    expect(named(kind).length).toBeGreaterThanOrEqual(least);
  });

  it('holds a consumable of every kind', () => {
    const kinds = new Set(
      lines
        .filter(({ material, item }) => material.kind === 'consumable' && item.key === 'kind')
        .map(({ item }) => textOf(item).replace(/^kind /, '')),
    );
    expect(consumableKinds.map(({ word }) => word).filter((kind) => !kinds.has(kind))).toEqual([]);
  });

  it.each([
    ['fabric', 'e_glass s_glass carbon_hs aramid flax basalt', /^fibre (\w+)/],
    ['fabric', 'woven stitched uni random', /^layers (\w+)/],
    ['fabric', 'powder styrene_soluble insoluble', /^binder (\w+)/],
  ] as const)('holds %s of %s', (kind, wanted, pattern) => {
    const said = new Set(
      lines
        .filter(({ material }) => material.kind === kind)
        .flatMap(({ item }) => pattern.exec(textOf(item))?.[1] ?? []),
    );
    expect(wanted.split(' ').filter((word) => !said.has(word))).toEqual([]);
  });

  it.each([
    [
      'core',
      [
        'PVC',
        'SAN',
        'PET',
        'Polyurethane',
        'Expanded polystyrene',
        'Extruded polystyrene',
        'Balsa',
        'Paulownia',
        'Cork',
        'honeycomb',
      ],
    ],
    [
      'fabric',
      ['plain', 'twill', '0 and +-45', '+-45', 'unidirectional', 'powder binder', 'emulsion binder', 'tissue', 'tape'],
    ],
    [
      'resin',
      [
        'Infusion epoxy, fast',
        'Infusion epoxy, slow',
        'Laminating epoxy, fast',
        'Laminating epoxy, slow',
        'Infusion polyester',
        'laminating polyester',
        'vinyl ester',
      ],
    ],
    ['gelcoat', ['brush', 'spray', 'Flow coat']],
  ] as const)('holds each %s of the trade', (kind, titles) => {
    const all = named(kind).map(({ title }) => title ?? '');
    expect(titles.filter((title) => !all.some((each) => each.includes(title)))).toEqual([]);
  });

  it.each([
    ['twill', 'carbon_twill_200'],
    ['balsa', 'balsa_150'],
    ['Cork', 'cork_120'],
    ['infusion', 'epoxy_infusion_slow'],
  ])('is asked by what a builder calls it: %s', (word, name) => {
    expect(referenceAlike(word)).toContain(name);
  });

  it('holds resins and gelcoats of each family and of each way to use them', () => {
    expect(named('resin').length + named('gelcoat').length).toBeGreaterThanOrEqual(10);
  });
});

// Ranges: review of natural and glass fibres in npj Materials Degradation 2022, table 3.
describe('fibres lie in the published ranges', () => {
  it.each([
    ['e_glass', 'density', 2500, 2590],
    ['e_glass', 'modulus', 70e9, 76e9],
    ['e_glass', 'strength', 2000e6, 3500e6],
    ['e_glass', 'strain', 0.018, 0.048],
    ['flax', 'density', 1400, 1500],
    ['flax', 'modulus', 27.6e9, 103e9],
    ['flax', 'strength', 343e6, 2000e6],
    ['flax', 'strain', 0.012, 0.033],
  ] as const)('%s %s', (name, key, least, most) => {
    expect(valueOf(name, key)).toBeGreaterThanOrEqual(least);
    expect(valueOf(name, key)).toBeLessThanOrEqual(most);
  });
});

// Class values of common practice, from memory: they keep a slip of a digit out, no more.
describe('class values are of the usual size', () => {
  it.each(named('fabric').map((fabric) => fabric.name))('%s weighs what its name says', (name) => {
    const text = textOf(
      lines.find(({ material, item }) => material.name === name && item.key === 'layers')?.item ?? {},
    );
    const weight = [...text.matchAll(/([\d.]+) g\/m2/g)].reduce((sum, match) => sum + Number(match[1]), 0);
    expect(weight).toBe(Number(/(\d+)$/.exec(name as string)?.[1]));
  });

  it.each(named('resin').map((resin) => resin.name as string))('%s', (name) => {
    expect(valueOf(name, 'density')).toBeGreaterThanOrEqual(1080);
    expect(valueOf(name, 'density')).toBeLessThanOrEqual(1200);
    expect(valueOf(name, 'demould')).toBeGreaterThan(valueOf(name, 'gel'));
  });

  it.each(['foam_pvc_60', 'foam_pvc_80', 'foam_pvc_100', 'foam_san_85', 'foam_pet_100', 'foam_pu_60'])(
    '%s: shear modulus below half of the modulus',
    (name) => {
      expect(valueOf(name, 'shear_modulus')).toBeLessThan(valueOf(name, 'modulus') / 2);
    },
  );

  it.each([
    ['epoxy_infusion_fast', 'epoxy_infusion_slow'],
    ['epoxy_laminating_fast', 'epoxy_laminating_medium'],
    ['epoxy_laminating_medium', 'epoxy_laminating_slow'],
  ])('%s gels and is handled before %s', (fast, slow) => {
    for (const key of ['pot_life', 'gel', 'demould'])
      expect([key, valueOf(fast, key) < valueOf(slow, key)]).toEqual([key, true]);
  });

  it('the hotter cure gives the higher glass transition, at most some 20 K above it', () => {
    for (const { name } of named('resin')) {
      const cures = lines
        .filter(({ material, item }) => material.name === name && item.key === 'tg')
        .map(({ item }) => [...textOf(item).matchAll(/(\d+) degC/g)].map((match) => Number(match[1])))
        .map(([tg = 0, cure = 0]) => ({ tg, cure }));
      const sorted = cures.toSorted((a, b) => a.cure - b.cure);
      expect([name, sorted.toSorted((a, b) => a.tg - b.tg)]).toEqual([name, sorted]);
      for (const { tg, cure } of cures) expect([name, tg > cure, tg - cure <= 25]).toEqual([name, true, true]);
    }
  });

  // polyethylene 920, polyamide 1140, fluoropolymers up to 2200 kg/m3: from memory
  it.each(['film_p3', 'solid_25', 'film_50', 'film_75_hot', 'film_stretch'])(
    '%s weighs what a film of its thickness weighs',
    (name) => {
      const density = valueOf(name, 'weight') / valueOf(name, 'thickness');
      expect(density).toBeGreaterThan(900);
      expect(density).toBeLessThan(2200);
    },
  );
});
