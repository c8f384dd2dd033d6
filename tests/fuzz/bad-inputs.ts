import { around } from './corpus.ts';

/** A text that nobody should write, and what must be said of it. */
export interface BadInput {
  readonly name: string;
  readonly text: () => string;
  /** a rule that must report it; `clean` where nothing is wrong */
  readonly told: RegExp | 'clean';
  /** longest time in milliseconds, on a slow machine; 10 s where nothing is said */
  readonly within?: number;
}

const recipe = (body: string): string => `recipe bad "Bad" {\n${body}\n}\n`;
const stack = (body: string): string => recipe(`  stack from tool sled_tool {\n${body}\n  }`);
const part = (outline: string): string => recipe(`  part {\n    outline ${outline}\n    edge square\n  }`);
const material = (facts: string): string => `resin bad_resin "Bad" {\n  family epoxy\n${facts}\n}\n`;
const many = (count: number, line: (index: number) => string, join = '\n'): string =>
  Array.from({ length: count }, (_, index) => line(index)).join(join);

const ply = '    ply one biax_440 at 0 deg';
/** A whole recipe, so that figures are worked out from the bad value in it. */
const built = (quantity: string): string =>
  `recipe bad "Bad" {
  quantity 2
  part {
    outline rounded ${quantity} by ${quantity} corner 10 mm
    edge round 8 mm
    ends heel to nose
  }
  stack from tool sled_tool {
    ply outer biax_440 at 0 deg, wrap onto body by ${quantity}, darts auto
    core body foam_80 ${quantity}, perforate ${quantity} every ${quantity}
    ply inner biax_440 at 0 deg, inset ${quantity}
  }
  process infusion with epoxy_slow at 23 degC {
    clean sled_tool
    peel nylon_85, ${quantity} past edge
    mesh mesh_130, ${quantity} short of edge
    bag film_50, pleats 12 of ${quantity}
    infuse {
      vacuum 50 mbar absolute until gel
    }
    cure {
      hold 24 h at 23 degC
    }
  }
  expect mass <= 2 kg
}
`;

const size: readonly BadInput[] = [
  { name: '10 MB', text: () => `// ${'x'.repeat(97)}\n`.repeat(100_000), told: /^line\// },
  {
    name: 'just below the longest text, of recipes',
    text: () =>
      many(8000, (i) => `tool t${i} "A tool" {\n  flat 1600 mm by 700 mm\n  flange 110 mm\n  count 2\n}\n`).slice(
        0,
        390_000,
      ),
    told: /^line\//,
    within: 40_000,
  },
  { name: '1 MB of line ends', text: () => '\n'.repeat(1_000_000), told: 'clean' },
  { name: '1 MB of commas', text: () => ','.repeat(999_999), told: /^line\// },
  { name: '1 MB of quotes', text: () => '"'.repeat(999_999), told: /^line\// },
  { name: '1 MB of quotes, one a line', text: () => '"\n'.repeat(499_999), told: /^line\// },
  { name: 'one line of 1 MB: a word', text: () => 'x'.repeat(999_999), told: /^line\// },
  { name: 'one line of 1 MB: words', text: () => 'ply '.repeat(249_999), told: /^line\// },
  { name: 'one line of 1 MB: digits', text: () => '9'.repeat(999_999), told: /^line\// },
  { name: 'one line of 1 MB: compound units', text: () => 'g/m2'.repeat(249_999), told: /^line\// },
  { name: 'one line of 1 MB: spaces', text: () => ' '.repeat(999_999), told: 'clean' },
  { name: 'text not ended, 1 MB', text: () => `recipe a "${'x'.repeat(999_900)}`, told: /^line\// },
  { name: 'block comment not ended, 1 MB', text: () => `/*${'x'.repeat(999_900)}`, told: /^line\// },
  { name: 'block comments begun over and over', text: () => '/*'.repeat(499_999), told: /^line\// },
  {
    name: 'unknown entries by the thousand',
    text: () => many(5000, (i) => `thing t${i} {\n  of ${i} mm\n}`),
    told: /^line\//,
    within: 20_000,
  },
  {
    name: 'unknown lines by the thousand in one recipe',
    text: () => recipe(many(10_000, (i) => `  thing ${i} mm`)),
    told: /^line\//,
    within: 20_000,
  },
];

const brackets: readonly BadInput[] = [
  { name: '100,000 open braces', text: () => '{'.repeat(100_000), told: /^line\// },
  { name: '100,000 open braces, one a line', text: () => '{\n'.repeat(100_000), told: /^line\// },
  { name: '100,000 open round brackets', text: () => '('.repeat(100_000), told: /^line\// },
  {
    name: '100,000 open round brackets in a let',
    text: () => recipe(`  let a = ${'('.repeat(100_000)}1 mm`),
    told: /^line\//,
  },
  { name: '100,000 closing braces', text: () => '}'.repeat(100_000), told: /^line\/surplus-brace/ },
  { name: '100,000 closing braces, one a line', text: () => '}\n'.repeat(100_000), told: /^line\/surplus-brace/ },
  { name: '100,000 closing round brackets', text: () => ')'.repeat(100_000), told: /^line\// },
  { name: '100,000 pairs of braces', text: () => '{}'.repeat(100_000), told: /^line\// },
  { name: '20,000 open blocks', text: () => 'recipe a {\n'.repeat(20_000), told: /^line\//, within: 20_000 },
  {
    name: 'round brackets 10,000 deep, all closed',
    text: () => recipe(`  let a = ${'('.repeat(10_000)}1 mm${')'.repeat(10_000)}`),
    told: /^line\//,
  },
  {
    name: 'round brackets 40 deep',
    text: () => recipe(`  let a = ${'('.repeat(40)}1 mm${')'.repeat(40)}`),
    told: 'clean',
  },
  {
    name: 'blocks 1,000 deep',
    text: () => stack(`${many(1000, () => 'repeat 2 {')}\n${ply}\n${'}\n'.repeat(1000)}`),
    told: /^line\//,
  },
  {
    name: 'steps 1,000 deep',
    text: () => recipe(`process hand {\n${'infuse {\n'.repeat(1000)}${'}\n'.repeat(1000)}}`),
    told: /^line\//,
  },
];

const repeats: readonly BadInput[] = [
  { name: 'repeat 1000000000', text: () => stack(`    repeat 1000000000 {\n${ply}\n    }`), told: /./ },
  { name: 'repeat 1000000000 of nothing', text: () => stack('    repeat 1000000000 {}'), told: /./ },
  { name: 'repeat 1e300', text: () => stack(`    repeat 1e300 {\n${ply}\n    }`), told: /./ },
  { name: 'repeat -3', text: () => stack(`    repeat -3 {\n${ply}\n    }`), told: /./ },
  { name: 'repeat 0', text: () => stack(`    repeat 0 {\n${ply}\n    }`), told: /./ },
  { name: 'repeat 2.5', text: () => stack(`    repeat 2.5 {\n${ply}\n    }`), told: /./ },
  {
    name: 'repeats in repeats, 2 to the 40',
    text: () => stack(`${'repeat 2 {\n'.repeat(40)}${ply}\n${'}\n'.repeat(40)}`),
    told: /./,
  },
  {
    name: 'mirrors one behind the other, 2 to the 200',
    text: () => stack(`${ply}\n${'    mirror\n'.repeat(200)}`),
    told: /./,
  },
  {
    name: 'mirrors in repeats',
    text: () => stack(`${'repeat 1000 {\n'.repeat(20)}${ply}\n${'mirror\n}\n'.repeat(20)}`),
    told: /./,
  },
  {
    name: '10,000 layers',
    text: () => stack(many(10_000, (i) => `    ply p${i} biax_440 at 0 deg`)),
    told: /./,
    within: 20_000,
  },
];

const lets: readonly BadInput[] = [
  { name: 'a let of itself', text: () => recipe('  let a = a'), told: /^name\/cyclic/ },
  { name: 'two lets of each other', text: () => recipe('  let a = b + 1 mm\n  let b = a * 2'), told: /^name\/cyclic/ },
  {
    name: 'a ring of 5,000 lets',
    text: () => recipe(many(5000, (i) => `  let a${i} = a${(i + 1) % 5000} + 1 mm`)),
    told: /^name\/cyclic/,
    within: 20_000,
  },
  {
    name: '10,000 lets, each twice the one before',
    text: () => recipe(`  let a0 = 1 mm\n${many(9999, (i) => `  let a${i + 1} = a${i} + a${i}`)}`),
    told: /^unit\/suspicious/,
    within: 20_000,
  },
  {
    name: '10,000 lets, each half the one behind',
    text: () => recipe(`${many(9999, (i) => `  let a${i} = a${i + 1} / 2`)}\n  let a9999 = 1 mm`),
    told: 'clean',
    within: 20_000,
  },
  {
    name: 'a sum of 2,000 terms',
    text: () => recipe(`  let a = ${many(2000, () => '1 mm', ' + ')}`),
    told: /^line\//,
    within: 20_000,
  },
  {
    name: 'a sum of 10,000 terms',
    text: () => recipe(`  let a = ${many(10_000, () => '1 mm', ' + ')}`),
    told: /^line\//,
    within: 20_000,
  },
  {
    name: 'a product beyond all numbers',
    text: () => recipe(`  let a = ${many(400, () => '1e9', ' * ')}`),
    told: /^unit\/suspicious/,
  },
  { name: 'divided by nothing', text: () => recipe('  let a = 1 mm / 0'), told: /^unit\/suspicious/ },
  {
    name: 'lengths to the 500th power',
    text: () => recipe(`  let a = ${many(500, () => '1 mm', ' * ')}`),
    told: 'clean',
  },
  {
    name: 'an outline from a cyclic let',
    text: () => recipe('  let a = b\n  let b = a\n  part {\n    outline circle a\n    edge square\n  }'),
    told: /^name\/cyclic/,
  },
];

const characters: readonly BadInput[] = [
  { name: 'NUL bytes', text: () => stack(`${ply}\u0000\n    ply \u0000two biax_440 at 0 deg`), told: /^line\// },
  { name: 'nothing but NUL bytes', text: () => '\u0000'.repeat(100_000), told: /^line\// },
  {
    name: 'mixed line ends',
    text: () => around['shop.layup']!.replaceAll('\n', '\r').replace('\r', '\r\n').replace('\r  labour', '\n  labour'),
    told: 'clean',
  },
  { name: 'old line ends', text: () => around['shop.layup']!.replaceAll('\n', '\r'), told: 'clean' },
  {
    name: 'a character that turns the direction of reading',
    text: () => stack(`${ply} // \u202eged 0 ta`),
    told: /^line\//,
  },
  { name: 'directions, in a text', text: () => recipe('  note "\u2066 hidden \u2069"'), told: /^line\// },
  {
    name: 'characters outside of every alphabet',
    text: () => '\ud83e\uddf5\ufffd\ud800\udfff'.repeat(10_000),
    told: /^line\//,
  },
  { name: 'a thousand accents on one letter', text: () => `recipe a${'\u0301'.repeat(1000)} {\n}\n`, told: /^line\// },
  {
    name: 'names of Object',
    text: () =>
      ['__proto__', 'constructor', 'toString', 'hasOwnProperty']
        .map(
          (name) =>
            `tool ${name} {\n  ${name} 2\n  count 1\n}\nrecipe ${name} {\n  ${name} 2\n  let ${name} = ${name}\n  size ${name} {\n  }\n}\n`,
        )
        .join(''),
    told: /^line\//,
  },
];

const duplicates: readonly BadInput[] = [
  {
    name: 'materials of one name',
    text: () => 'fabric own {\n  fibre e_glass\n}\n'.repeat(3),
    told: /^name\/duplicate/,
  },
  { name: 'tools of one name', text: () => 'tool own {\n  count 1\n}\n'.repeat(3), told: /^name\/duplicate/ },
  { name: 'recipes of one name', text: () => 'recipe own {\n}\n'.repeat(3), told: /^name\/duplicate/ },
  {
    name: 'a material under two kinds',
    text: () => 'fabric own {\n  fibre e_glass\n}\nresin own {\n  family epoxy\n}\n',
    told: /^name\/duplicate/,
  },
  { name: 'two shops', text: () => 'shop "One" {\n}\nshop "Two" {\n}\n', told: /^name\/duplicate/ },
  { name: 'layers of one name', text: () => stack(`${ply}\n${ply}`), told: /./ },
  { name: 'lets of one name', text: () => recipe('  let a = 1 mm\n  let a = 2 mm'), told: /./ },
  { name: 'sizes of one name', text: () => recipe('  size short {\n  }\n  size short {\n  }'), told: /./ },
  {
    name: 'zones of one name',
    text: () =>
      recipe(
        '  part {\n    outline circle 200 mm\n    edge square\n    zone z circle 20 mm\n    zone z circle 30 mm\n  }',
      ),
    told: /./,
  },
  {
    name: 'blocks twice',
    text: () =>
      recipe(
        '  part {\n    outline circle 200 mm\n  }\n  part {\n    outline circle 300 mm\n  }\n  stack from tool sled_tool {\n  }\n  stack from tool sled_tool {\n  }',
      ),
    told: /./,
  },
  {
    name: 'like itself, in a ring',
    text: () =>
      'recipe a like b {\n}\nrecipe b like c {\n}\nrecipe c like a {\n}\nfabric f like g {\n}\nfabric g like f {\n}\n',
    told: /^name\/cyclic/,
  },
  {
    name: 'like one another, 5,000 long',
    text: () => many(5000, (i) => `recipe r${i} like r${i + 1} {\n}`),
    told: /./,
    within: 30_000,
  },
];

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

const values: readonly BadInput[] = [
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
    within: 20_000,
  },
  {
    name: 'a polygon of one point, three times',
    text: () => part('polygon (0 mm, 0 mm), (0 mm, 0 mm), (0 mm, 0 mm)'),
    told: /./,
  },
  { name: 'a path of 100,000 pieces', text: () => part(`path "M0 0 ${'L1 1 '.repeat(100_000)}Z"`), told: 'clean' },
  {
    name: 'an overhead of everything',
    text: () =>
      'shop "Bad" {\n  overhead 1e300 %\n  labour -1e300 EUR/h\n  elevation 1e9 m\n  pump -5 mbar absolute\n  people 0\n  scale 0 g\n  humidity 900 % RH\n}\n',
    told: /./,
  },
  { name: 'an order of 1e300 parts', text: () => built('300 mm').replace('quantity 2', 'quantity 1e300'), told: /./ },
];

const dates: readonly BadInput[] = [
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

export const badInputs: Readonly<Record<string, readonly BadInput[]>> = {
  size,
  brackets,
  repeats,
  lets,
  characters,
  duplicates,
  values,
  dates,
};
