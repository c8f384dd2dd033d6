import type { Book, Layer, Material, Recipe, Shop, Step, Tool } from '../../calc/model/index.ts';
import { DENSITY, dimension, LENGTH, NUMBER, timesPower } from '../../calc/quantity/index.ts';

/** The sled deck of the notation built by hand, without any text, so that calc is tested alone. */

import {
  amount,
  celsius,
  clause,
  counted,
  deg,
  euro,
  fabric,
  fact,
  gsm,
  kg,
  layer,
  material,
  mbar,
  minutes,
  mm,
  percent,
  phrase,
  price,
  reading,
  said,
  step,
  word,
} from './model-parts.ts';

export * from './model-parts.ts';

export const MATERIALS: readonly Material[] = [
  material('fibre', 'e_glass', { density: amount(2560, DENSITY) }),
  material('fibre', 'carbon_hs', { density: amount(1800, DENSITY) }),
  fabric(
    'triax_680',
    'e_glass',
    'stitched',
    [
      [0, 280],
      [45, 200],
      [-45, 200],
    ],
    {
      fractions: [
        fact('material/triax_680', 'fraction', { of: 'fibre', amount: percent(52, 'by volume'), process: 'infused' }),
      ],
      roll: fact('material/triax_680', 'roll', { width: mm(1270), length: amount(50, LENGTH) }),
      prices: [price('triax_680', 7.4, 'area')],
    },
  ),
  fabric('uni_c300', 'carbon_hs', 'uni', [[0, 300]], {
    roll: fact('material/uni_c300', 'roll', { width: mm(60) }),
    prices: [price('uni_c300', 1.9, 'length')],
  }),
  fabric(
    'biax_440',
    'e_glass',
    'stitched',
    [
      [45, 220],
      [-45, 220],
    ],
    { prices: [price('biax_440', 5.1, 'area')] },
  ),
  material(
    'core',
    'foam_80',
    { density: amount(80, DENSITY), surface: gsm(200) },
    { prices: [price('foam_80', 21, 'area', mm(12)), price('foam_80', 33, 'area', mm(20))] },
  ),
  material(
    'core',
    'birch_ply',
    { density: amount(680, DENSITY) },
    { prices: [price('birch_ply', 30, 'area', mm(20))] },
  ),
  material(
    'resin',
    'epoxy_slow',
    { family: 'epoxy', mix: { ratio: [100, 31], basis: 'by weight' }, density: amount(1100, DENSITY) },
    {
      potLife: [reading('epoxy_slow', 'pot_life', { value: minutes(110), temperature: celsius(23), mass: kg(0.15) })],
      gel: [reading('epoxy_slow', 'gel', { value: minutes(240), temperature: celsius(23) })],
      prices: [price('epoxy_slow', 15.2, 'mass')],
    },
  ),
  material(
    'consumable',
    'semi_permanent',
    { consumableKind: 'release', coverage: amount(40_000, timesPower(NUMBER, LENGTH, -1)) },
    { prices: [price('semi_permanent', 48_000, 'volume')] },
  ),
  material('consumable', 'sealant_12', { consumableKind: 'tape' }, { prices: [price('sealant_12', 0.5, 'length')] }),
  material('consumable', 'spray_tack', { consumableKind: 'tack' }, { prices: [price('spray_tack', 26, 'mass')] }),
  material(
    'consumable',
    'nylon_85',
    { consumableKind: 'peel', takes: gsm(60) },
    { prices: [price('nylon_85', 2.4, 'area')] },
  ),
  material(
    'consumable',
    'mesh_130',
    { consumableKind: 'mesh', takes: gsm(500) },
    { prices: [price('mesh_130', 2.4, 'area')] },
  ),
  material(
    'consumable',
    'spiral_10',
    { consumableKind: 'feed_line', bore: mm(10) },
    { prices: [price('spiral_10', 0.6, 'length')] },
  ),
  material(
    'consumable',
    'tube_10',
    { consumableKind: 'tube', bore: mm(10) },
    { prices: [price('tube_10', 1.1, 'length')] },
  ),
  material('consumable', 'film_50', { consumableKind: 'film' }, { prices: [price('film_50', 1.2, 'area')] }),
  material('consumable', 'grey_paste', { consumableKind: 'pigment' }, { prices: [price('grey_paste', 22, 'mass')] }),
];

export const SHOP: Shop = {
  entry: 'shop',
  currency: fact('shop', 'currency', 'EUR'),
  labour: fact('shop', 'labour', amount(34 / 3600, dimension({ money: 1, time: -1 }), { currency: 'EUR' })),
  overhead: fact('shop', 'overhead', percent(12)),
  ambient: fact('shop', 'ambient', celsius(21)),
  elevation: fact('shop', 'elevation', amount(340, LENGTH)),
  pump: fact('shop', 'pump', mbar(15, 'absolute')),
  people: fact('shop', 'people', 2),
  scale: fact('shop', 'scale', kg(0.0001)),
};

export const SLED_TOOL: Tool = {
  entry: 'tool/sled_tool',
  name: 'sled_tool',
  origin: 'workspace',
  flange: fact('tool/sled_tool', 'flange', mm(110)),
  cost: fact('tool/sled_tool', 'cost', { amount: euro(900), parts: 150 }),
};

export function bookOf(
  materials: readonly Material[] = MATERIALS,
  shop: Shop | undefined = SHOP,
  tools: readonly Tool[] = [SLED_TOOL],
): Book {
  const byName = new Map(materials.map((m) => [m.name, m]));
  const toolsByName = new Map(tools.map((t) => [t.name, t]));
  return {
    shop,
    material: (name) => byName.get(name),
    tool: (name) => toolsByName.get(name),
    recipe: () => undefined,
    recordsOfLot: () => [],
    recordsOnTool: () => [],
  };
}

/** The standard book with some materials replaced. */
export const bookWith = (...changed: readonly Material[]): Book =>
  bookOf([...MATERIALS.filter((m) => !changed.some((c) => c.name === m.name)), ...changed]);

export const materialNamed = (name: string): Material => {
  const found = MATERIALS.find((m) => m.name === name);
  if (found === undefined) throw new Error(`the standard book has no ${name}`);
  return found;
};

const at = (x: number, y: number, from?: string) => ({
  x: { offset: mm(x), ...(from === undefined ? {} : { from }) },
  y: { offset: mm(y) },
});

export const SLED_LAYERS: readonly Layer[] = [
  layer('ply', 'outer', 'triax_680', 'stack.0', {
    angle: deg(0),
    extent: { kind: 'wrap', way: 'onto', target: 'body', landing: mm(25) },
    darts: 'auto',
    tabs: [{ length: mm(60), end: 'heel' }],
  }),
  layer('strip', 'keel', 'uni_c300', 'stack.1', {
    angle: deg(0),
    extent: { kind: 'strip', width: mm(60), length: mm(620), centre: at(100, 0) },
  }),
  layer('core', 'body', 'foam_80', 'stack.2', {
    thickness: mm(20),
    perforation: { diameter: mm(2), pitch: mm(50) },
    grooves: [{ strip: 'keel', path: 'stack.2.groove' }],
  }),
  layer('insert', 'bolts', 'birch_ply', 'stack.3', {
    thickness: mm(20),
    extent: { kind: 'shape', shape: { kind: 'rectangle', length: 0.11, width: 0.08 }, centre: at(210, 0, 'heel') },
  }),
  layer('patch', 'pad', 'biax_440', 'stack.4', { angle: deg(45), extent: { kind: 'zone', zone: 'mount' } }),
  layer('ply', 'inner', 'triax_680', 'stack.5', {
    angle: deg(0),
    extent: { kind: 'net', typed: true },
    turnedOver: true,
  }),
];

export const SLED_STEPS: readonly Step[] = [
  step('process.0', 'clean', { arguments: [word('sled_tool')] }),
  step('process.1', 'release', {
    material: 'semi_permanent',
    clauses: [
      clause('amount', [counted(5, 'coats'), word('new')]),
      clause('amount', [counted(1, 'coat')], phrase('every', counted(4, 'pulls'))),
      clause('amount', [said(minutes(20)), word('each')]),
    ],
  }),
  step('process.2', 'tape', { material: 'sealant_12' }),
  step('process.3', 'kit', {
    steps: [
      step('process.3.0', 'tack', { material: 'spray_tack', arguments: [said(gsm(8))] }),
      step('process.3.1', 'lay', { lay: { what: 'layers', first: 'outer', last: 'body' } }),
    ],
  }),
  step('process.4', 'lay', { lay: { what: 'kit' } }),
  step('process.5', 'lay', { lay: { what: 'rest' } }),
  step('process.6', 'peel', {
    material: 'nylon_85',
    clauses: [clause('amount', [said(mm(80))], phrase('past', word('edge')))],
  }),
  step('process.7', 'mesh', {
    material: 'mesh_130',
    clauses: [clause('amount', [said(mm(40)), word('short')], phrase('of', word('edge')))],
  }),
  step('process.8', 'feed', {
    name: 'f1',
    material: 'spiral_10',
    phrases: [
      phrase('from', { kind: 'point', point: at(90, 0, 'heel') }),
      phrase('to', { kind: 'point', point: at(90, 0, 'nose') }),
    ],
  }),
  step('process.9', 'vent', {
    name: 'v1',
    material: 'spiral_10',
    arguments: [word('perimeter')],
    clauses: [
      clause('amount', [said(mm(60)), word('outside')]),
      clause('through', [word('tape')], phrase('by', word('tube_10'))),
    ],
  }),
  step('process.10', 'trap'),
  step('process.11', 'bag', {
    material: 'film_50',
    clauses: [clause('pleats', [said(amount(4, NUMBER))], phrase('of', said(mm(40))))],
  }),
  step('process.12', 'leak test', { arguments: [said(mbar(5))], phrases: [phrase('in', said(minutes(10)))] }),
  step('process.13', 'check', { text: 'No bridging at the edge.' }),
  step('process.14', 'tint', { material: 'grey_paste', arguments: [said(percent(2, 'by weight'))] }),
  step('process.15', 'infuse', {
    steps: [
      step('process.15.0', 'open', { arguments: [word('f1')] }),
      step('process.15.1', 'clamp', { arguments: [word('f1')], phrases: [phrase('when', word('full'))] }),
      step('process.15.2', 'vacuum', {
        arguments: [said(mbar(50, 'absolute'))],
        phrases: [phrase('until', word('gel'))],
      }),
    ],
  }),
  step('process.16', 'cure', {
    steps: [
      step('process.16.0', 'hold', { arguments: [said(minutes(24 * 60))], phrases: [phrase('at', said(celsius(23)))] }),
      step('process.16.1', 'ramp', {
        arguments: [said(amount(10 / 3600, dimension({ temperature: 1, time: -1 })))],
        phrases: [phrase('to', said(celsius(50)))],
      }),
      step('process.16.2', 'hold', { arguments: [said(minutes(8 * 60))], phrases: [phrase('at', said(celsius(50)))] }),
    ],
  }),
  step('process.17', 'demould'),
  step('process.18', 'trim', { arguments: [word('flash')] }),
  step('process.19', 'drill', {
    arguments: [counted(8, 'holes'), said(mm(8))],
    phrases: [phrase('in', word('bolts'))],
  }),
  step('process.20', 'weigh'),
];

export const SLED: Recipe = {
  entry: 'recipe/sled_deck',
  name: 'sled_deck',
  title: 'Rescue sled deck',
  sizes: ['short'],
  revision: 4,
  quantity: 12,
  lets: {},
  part: {
    path: 'part',
    outline: { kind: 'rounded', length: 1.18, width: 0.42, corner: 0.14 },
    cutouts: [],
    edge: { kind: 'round', radius: mm(8) },
    ends: { from: 'heel', to: 'nose' },
    trimAllowance: mm(0),
    zones: [
      {
        name: 'mount',
        path: 'part.mount',
        shape: { kind: 'rounded', length: 0.26, width: 0.18, corner: 0.04 },
        centre: at(210, 0, 'heel'),
      },
    ],
  },
  stack: { path: 'stack', from: 'tool', tool: 'sled_tool', items: SLED_LAYERS },
  process: { path: 'process', kind: 'infusion', resin: 'epoxy_slow', temperature: celsius(23), steps: SLED_STEPS },
  loads: [],
  expects: [
    { path: 'expect.0', test: { what: 'mass', comparison: '<=', limit: kg(2.3) } },
    { path: 'expect.1', test: { what: 'sag', under: 'rider', comparison: '<=', limit: mm(12) } },
    { path: 'expect.2', test: { what: 'thickness', at: 'middle', low: mm(20.8), high: mm(21.5) } },
    { path: 'expect.3', test: { what: 'material', comparison: '<=', limit: euro(75) } },
    { path: 'expect.4', test: { what: 'cost', comparison: '<=', limit: euro(290) } },
  ],
};
