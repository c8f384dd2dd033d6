import { type BadInput, many, ply, recipe, stack } from './bad-input-kit.ts';

export const repeats: readonly BadInput[] = [
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
  },
];

export const lets: readonly BadInput[] = [
  { name: 'a let of itself', text: () => recipe('  let a = a'), told: /^name\/cyclic/ },
  { name: 'two lets of each other', text: () => recipe('  let a = b + 1 mm\n  let b = a * 2'), told: /^name\/cyclic/ },
  {
    name: 'a ring of 5,000 lets',
    text: () => recipe(many(5000, (i) => `  let a${i} = a${(i + 1) % 5000} + 1 mm`)),
    told: /^name\/cyclic/,
  },
  {
    name: '10,000 lets, each twice the one before',
    text: () => recipe(`  let a0 = 1 mm\n${many(9999, (i) => `  let a${i + 1} = a${i} + a${i}`)}`),
    told: /^unit\/suspicious/,
  },
  {
    name: '10,000 lets, each half the one behind',
    text: () => recipe(`${many(9999, (i) => `  let a${i} = a${i + 1} / 2`)}\n  let a9999 = 1 mm`),
    told: 'clean',
  },
  {
    name: 'a sum of 2,000 terms',
    text: () => recipe(`  let a = ${many(2000, () => '1 mm', ' + ')}`),
    told: /^line\//,
  },
  {
    name: 'a sum of 10,000 terms',
    text: () => recipe(`  let a = ${many(10_000, () => '1 mm', ' + ')}`),
    told: /^line\//,
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

export const duplicates: readonly BadInput[] = [
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
  },
];
