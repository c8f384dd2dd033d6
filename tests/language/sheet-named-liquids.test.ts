/** Steps that name a resin of their own: how it is mixed, its lot, and what it can do to whoever handles it. */
import { cpSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { answering, folderOf, laybook } from '../harness/terminal.ts';

async function page(name: string, book: string, text?: string): Promise<string> {
  const { folder, dispose } = folderOf(text === undefined ? {} : { 'book.layup': text });
  onTestFinished(dispose);
  expect((await laybook(folder, 'sheet', name, text === undefined ? book : '.', '--out', 'sheet.html')).code).toBe(0);
  return readFileSync(path.join(folder, 'sheet.html'), 'utf8')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
}

const recipes = path.join(root, 'tests/recipes');

it('what seals an edge or fills a hole is told by its ratio, has a lot, and is warned of where it is handled', async () => {
  const text = await page('hatch_lid', recipes);
  const [, seal = ''] = /Seal the cut edge with epoxy_laminating_medium\.(.*?)Closes a cut edge/.exec(text) ?? [];
  // 100:35, of 100 g: 74.1 g and 25.9 g, and no more than 2 % above
  const [, resin = '', hardener = ''] = / are .*? resin ([\d.]+) g .*? hardener ([\d.]+) g/.exec(seal) ?? [];
  expect(Number(hardener) / Number(resin)).toBeCloseTo(0.35, 2);
  expect(Number(resin) + Number(hardener)).toBeLessThan(103);
  // the way round is 2 (540 + 340) mm and a circle of 90 mm radius; without the core, which ends inside, the edge is
  // 1 + 0.765 + 2 (0.469 + 0.234) mm high (the coat, the mat, two of each cloth) and takes 300 g/m2
  const edge = 2 * (0.54 + 0.34) + 2 * Math.PI * 0.09;
  const grams = 300 * edge * (1 + 0.765 + 2 * (0.469 + 0.234)) * 1e-3;
  const [, about = ''] = /About ([\d.]+) g of it is used/.exec(seal) ?? [];
  expect(Number(about) / grams).toBeCloseTo(1, 1);
  expect(about).not.toBe('');
  const [, drill = ''] = /Drill 4 holes 8 mm in hinge_left\.(.*?)Holes, in an insert/.exec(text) ?? [];
  expect(drill).toContain('Epoxy sensitises');
  expect(drill).toMatch(/Mix filleting_mix as it is used; of 100 g are .* cotton_flock 10 g 100\.4 g/);
  expect(text).toMatch(/lot expires .* epoxy_laminating_medium filleting_mix Stands open/);
  expect(text).toMatch(/From: epoxy_laminating_medium\. At: seal edge, drill\./);
  const { folder, dispose } = folderOf({});
  onTestFinished(dispose);
  cpSync(recipes, folder, { recursive: true });
  const { asked } = await answering(folder, Array(12).fill(''), 'record', 'hatch_lid', '--date', '2026-05-14');
  expect(asked.join(' ')).toContain('Lot of filleting_mix');
}, 20_000);

it('a pot that a hand layup mixes is warned of as one that is infused: a quarter of a kilogram melts its cup', async () => {
  const text = await page('drip_tray', path.join(root, 'extension/sample'));
  const [, lay = ''] = /Lay mat\.1 to roving\.1\.(.*?)Lays layers by name/.exec(text) ?? [];
  expect(lay).toContain('A pot that gets hot: carry it outdoors');
  // 270 g of gelcoat for a lid in two pots of 258 g, and 13 g of paste, which is none
  const lid = await page('hatch_lid', recipes);
  expect(/Lay outer to inner\.(.*?)Lays layers by name/.exec(lid)?.[1]).not.toContain('A pot that gets hot');
});

it('a sheet says on which side of the edge it ends', async () => {
  const text = await page(
    'flat',
    '',
    `notation 1
recipe flat {
  part { outline rectangle 400 mm by 300 mm }
  stack { ply a biax_440 }
  process infusion with epoxy_infusion_slow at 23 degC {
    lay a
    peel nylon_85, 30 mm past edge
    perforated film_open, 5 mm short of edge
    mesh mesh_130, 20 mm short of edge
    infuse
    cure 24 h at 23 degC
    demould
  }
}
`,
  );
  for (const line of [
    'Peel ply nylon_85, 30 mm past the edge.',
    'Perforated film film_open, 5 mm short of the edge.',
    'Flow mesh mesh_130, 20 mm short of the edge.',
  ])
    expect(text).toContain(line);
});

it('what ends before a dam, lies in a corner or is counted is told so', async () => {
  const text = await page('fairing_panel', recipes);
  for (const line of [
    'Perforated film film_p3, 5 mm short of the dam.',
    'Caul alu_2, 3 mm short of the dam.',
    'Intensifier silicone_6 at corner_a.',
    'Thermocouples: 2. in flange',
    'Hold 30 min. part within 5 K',
    'Hold 60 min. part above 117 degC',
  ])
    expect(text).toContain(line);
});

it('the name of a pot tells all that is in the cup, as the balance shows it at the end', async () => {
  const text = await page('sled_deck', path.join(root, 'extension/sample'));
  const [, told = '', rows = ''] = /Mix epoxy_slow: ([\d.]+) kg(.*?)Mix it when/.exec(text) ?? [];
  const shown = [...rows.matchAll(/hardener [\d.]+ g ([\d.]+) g/g)].map(([, grams]) => Number(grams));
  expect(shown).toHaveLength(1);
  expect(Math.abs(Number(told) * 1000 - (shown[0] ?? 0))).toBeLessThan(1);
});

it('an instruction says nothing that the order of the steps belies: here the masking comes off a hard coat', async () => {
  const text = await page('hatch_lid', path.join(root, 'extension/sample'));
  expect(text.indexOf('Wait 4 h.')).toBeLessThan(text.indexOf('Pull the masking off the flange.'));
});
