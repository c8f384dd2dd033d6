import { type BadInput, many, ply, recipe, stack } from './bad-input-kit.ts';
import { around } from './corpus.ts';

export const size: readonly BadInput[] = [
  { name: '10 MB', text: () => `// ${'x'.repeat(97)}\n`.repeat(100_000), told: /^line\// },
  {
    name: 'just below the longest text, of recipes',
    text: () =>
      many(8000, (i) => `tool t${i} "A tool" {\n  flat 1600 mm by 700 mm\n  flange 110 mm\n  count 2\n}\n`).slice(
        0,
        390_000,
      ),
    told: /^line\//,
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
  },
  {
    name: 'unknown lines by the thousand in one recipe',
    text: () => recipe(many(10_000, (i) => `  thing ${i} mm`)),
    told: /^line\//,
  },
];

export const brackets: readonly BadInput[] = [
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
  { name: '20,000 open blocks', text: () => 'recipe a {\n'.repeat(20_000), told: /^line\// },
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

export const characters: readonly BadInput[] = [
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
