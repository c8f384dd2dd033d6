import { type BadInput, built, many, material, part, recipe, stack } from './bad-input-kit.ts';

/** Every one of these in every place of a recipe that takes a length. */
const quantities = [
  '0 mm',
  '-5 mm',
  '1e300 mm',
  '1e-300 mm',
  '1e999 mm',
  '-1e999 mm',
  `${'9'.repeat(400)} mm`,
  `0.${'0'.repeat(400)}1 mm`,
  '12',
  '12 furlong',
  '5 kg',
  '?',
  '1,5 mm',
  '1e308 km',
  '4e4 m',
];

export const values: readonly BadInput[] = [
  ...quantities.map(
    (quantity): BadInput => ({
      name: `lengths of ${quantity.length > 20 ? `${quantity.slice(0, 6)}... ${quantity.length} characters` : quantity}`,
      text: () => built(quantity),
      told: /./,
    }),
  ),
  ...['0 g/cm3', '-1 g/cm3', '1e300 g/cm3', '1e999 g/cm3', '1e-300 g/cm3', `${'9'.repeat(400)} g/cm3`].map(
    (density): BadInput => ({
      name: `a density of ${density.slice(0, 20)}`,
      text: () =>
        `${material(`  density ${density}\n  mix 100:0 by weight\n  viscosity ${density.split(' ')[0]} mPa.s at 23 degC\n  pot_life 0 min at 23 degC for 0 g`)}${built('300 mm').replaceAll('epoxy_slow', 'bad_resin')}`,
      told: /./,
    }),
  ),
  { name: 'a mixture of nothing', text: () => material('  mix 0:0 by weight'), told: /./ },
  { name: 'a mixture of 400 digits', text: () => material(`  mix ${'9'.repeat(400)}:1 by weight`), told: /./ },
  { name: 'colder than cold', text: () => material('  gel 20 min at -300 degC'), told: /./ },
  { name: 'hotter than hot', text: () => built('300 mm').replaceAll('23 degC', '1e9 degC'), told: /./ },
  {
    name: 'a tolerance of anything',
    text: () => recipe('  part {\n    outline circle 200 mm\n    edge round 8 mm +- 1e999 mm\n  }'),
    told: /./,
  },
  {
    name: 'a perforation finer than dust',
    text: () => stack('    core body foam_80 20 mm, perforate 2 mm every 0.001 mm'),
    told: /./,
  },
  {
    name: 'a perforation beyond counting',
    text: () => stack('    core body foam_80 20 mm, perforate 1e-9 mm every 1e-9 mm'),
    told: /./,
  },
  {
    name: 'a polygon of 300 points',
    text: () => part(`polygon ${many(300, (i) => `(${i} mm, ${(i * 37) % 300} mm)`, ', ')}`),
    told: /./,
  },
  {
    name: 'a polygon of 10,000 points',
    text: () =>
      part(
        `polygon {\n${many(10_000, (i) => `(${(400 * Math.cos(i / 1591.5)).toFixed(3)} mm, ${(400 * Math.sin(i / 1591.5)).toFixed(3)} mm)`)}\n}`,
      ),
    told: 'clean',
  },
  {
    name: 'a polygon of one point, three times',
    text: () => part('polygon (0 mm, 0 mm), (0 mm, 0 mm), (0 mm, 0 mm)'),
    told: /./,
  },
  {
    name: 'a path of 100,000 pieces',
    text: () => part(`path "M0 0 ${'L1 1 '.repeat(100_000)}Z"`),
    told: /^outline\/degenerate/,
  },
  {
    name: 'an overhead of everything',
    text: () =>
      'shop "Bad" {\n  overhead 1e300 %\n  labour -1e300 EUR/h\n  elevation 1e9 m\n  pump -5 mbar absolute\n  people 0\n  scale 0 g\n  humidity 900 % RH\n}\n',
    told: /./,
  },
  { name: 'an order of 1e300 parts', text: () => built('300 mm').replace('quantity 2', 'quantity 1e300'), told: /./ },
];

export const dates: readonly BadInput[] = [
  '2026-02-30',
  '9999-99-99',
  '0000-00-00',
  '2026-13-01',
  '2025-02-29',
  '2026-00-10',
].map((date) => ({
  name: `a record of ${date}`,
  text: () => `recipe own {\n}\nrecord own ${date} {\n  lot epoxy_slow "A" expires ${date}\n}\n`,
  told: /^record\/impossible/,
}));
