/** Mixes of several kinds, worked by hand: report, sheet and record mean the same grams. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { answering, folderOf, laybook } from '../harness/terminal.ts';

const shared = `notation 1
shop "Hollow Tarn Workshop" {
  currency EUR
  ambient 20 degC
  people 2
  scale 0.1 g
}
fabric mat_300 "Mat" {
  fibre e_glass
  layers random 300 g/m2
  roll 1250 mm by 90 m
}
fabric biax "Biax" {
  fibre e_glass
  layers stitched 45 deg 300 g/m2, -45 deg 300 g/m2
  roll 1270 mm by 50 m
}
resin vinyl "Vinyl ester" {
  family vinyl_ester
  accelerated
  catalyst perox 1 % by weight, 0.8 % to 3 % by weight
  density 1.1 g/cm3
  gel 40 min at 20 degC with 1 % by weight
}
catalyst perox "Peroxide" {
  density 1.1 g/cm3
}
catalyst perox_slow "Peroxide, slow" {
  density 1.1 g/cm3
}
resin epox "Epoxy" {
  family epoxy
  mix 100:30 by weight
  density 1.1 g/cm3
  viscosity 300 mPa.s at 23 degC
  pot_life 20 min at 20 degC for 1000 g
  gel 240 min at 20 degC
}
tool table "Table" {
  flat 2400 mm by 1200 mm
}
`;

const recipe = (name: string, outline: string, stack: readonly string[], process: readonly string[]): string => `
recipe ${name} {
  revision 1
  part { outline rectangle ${outline} }
  stack from tool table {
    ${stack.join('\n    ')}
  }
  process ${process[0]} {
    ${process.slice(1).join('\n    ')}
  }
}
`;

interface Told {
  /** a line a pot: `vinyl: resin 770, perox 15.4` */
  readonly pots: readonly string[];
  /** what the report says is mixed: `resin 2255, perox 31.6` */
  readonly mixed: string;
  readonly folder: string;
}

async function told(name: string, text: string): Promise<Told> {
  const { folder, dispose } = folderOf({ 'book.layup': shared + text });
  onTestFinished(dispose);
  expect((await laybook(folder, 'sheet', name, '.', '--out', 'sheet.html')).code).toBe(0);
  const page = readFileSync(path.join(folder, 'sheet.html'), 'utf8');
  const pots = [...page.matchAll(/<div class="pot"><h4>Mix (.*?)<\/h4><table>.*?<tbody>(.*?)<\/tbody>/gs)];
  const grams = (rows: string): string =>
    [...rows.matchAll(/<tr><td>(.*?)<\/td><td class="number">([\d.]+) g/g)].map(([, a, b]) => `${a} ${b}`).join(', ');
  const { out } = await laybook(folder, 'report', name, '.', '--format', 'json');
  const [own]: { readonly mix: { readonly parts: readonly Part[] } }[] = JSON.parse(out).resins;
  const parts = own?.mix.parts ?? [];
  return {
    pots: pots.map(([, title = '', rows = '']) => `${title.replace(/: [\d.]+ k?g/, '')}: ${grams(rows)}`),
    mixed: parts.map(({ what, mass }) => `${what} ${Number((mass.value * 1000).toFixed(1))}`).join(', '),
    folder,
  };
}

interface Part {
  readonly what: string;
  readonly mass: { readonly value: number };
}

async function planOf(folder: string, name: string, line: string): Promise<string | undefined> {
  const record = `notation 1\nrecord ${name} 2026-11-25 "no. 1" {\n  revision 1\n  ${line}\n}\n`;
  writeFileSync(path.join(folder, 'built.layup'), record);
  const { out } = await laybook(folder, 'records', name, '.');
  return /\(([+-]?[\d.]+ %)\)/.exec(out)?.[1];
}

describe('wet layers in an infusion', () => {
  // 1 m2: 300 g of mat at 30 % take 700 g; a coat of 250 g; 2 x 600 g of biax at 60 % take 800 g; 300 g stay in the pot
  const mixed = recipe(
    'mixed',
    '1000 mm by 1000 mm',
    [
      'ply skin mat_300 with vinyl, fibre 30 % by weight',
      'coat tie vinyl 250 g/m2, brush',
      'ply a biax at 0 deg, fibre 60 % by weight',
      'ply b biax at 0 deg, fibre 60 % by weight',
    ],
    [
      'infusion with vinyl at 20 degC',
      'lay skin, catalyst 2 % by weight',
      'wait 4 h',
      'lay tie, catalyst perox_slow 1.5 % by weight',
      'lay a to b',
      'bag film_50',
      'infuse',
      'cure 24 h at 20 degC',
      'demould',
    ],
  );

  it('wet by its own line or a coat of the same resin: a pot each, with the dose and the catalyst of its step', async () => {
    const { pots, mixed: all, folder } = await told('mixed', mixed);
    // 1.1 x 700 at 2 %; 1.1 x 250 at 1.5 %; 1.1 x (800 + 300) at the 1 % of the resin
    expect(pots).toEqual([
      'vinyl: resin 770, perox 15.4',
      'vinyl: resin 275, perox_slow 4.1',
      'vinyl: resin 1210, perox 12.1',
    ]);
    expect(all).toBe('resin 2255, perox 27.5, perox_slow 4.1');
    expect(await planOf(folder, 'mixed', 'batch 1.21 kg at 20 degC')).toBe('0 %');
  });

  it('what is catalysed before an infusion is for its pot alone', async () => {
    const { pots } = await told(
      'mixed',
      mixed.replace('    infuse\n', '    catalyse perox 1.2 % by weight\n    infuse\n'),
    );
    // 1.2 % of 1210 g
    expect(pots.at(-1)).toBe('vinyl: resin 1210, perox 14.5');
    expect(pots[0]).toBe('vinyl: resin 770, perox 15.4');
  });

  it('is mixed at the line that says so, as much as it says, and not again at the infusion', async () => {
    const { pots } = await told('mixed', mixed.replace('    infuse\n', '    mix 1.5 kg, batches 2\n    infuse\n'));
    expect(pots.slice(1)).toEqual([
      'vinyl: resin 275, perox_slow 4.1',
      'vinyl: 2 pots of 758 g, one after the other: resin 750, perox 7.5',
    ]);
    const plain = await told('mixed', mixed.replace('    infuse\n', '    mix\n    infuse\n'));
    expect(plain.pots.at(-1)).toBe('vinyl: resin 1210, perox 12.1');
    expect(plain.pots).toHaveLength(3);
    expect(plain.mixed).toBe('resin 2255, perox 27.5, perox_slow 4.1');
  });

  it('a pot of the infusion lives until it is drunk, though layers were wet sooner', async () => {
    // 2 m2: 1400 g wet; 3 x 1200 g at 60 % take 2400 g, 300 g in the pot: 1540 g and 2970 g
    const {
      pots,
      mixed: all,
      folder,
    } = await told(
      'pots',
      recipe(
        'pots',
        '2000 mm by 1000 mm',
        [
          'ply skin mat_300, fibre 30 % by weight',
          ...['a', 'b', 'c'].map((name) => `ply ${name} biax at 0 deg, fibre 60 % by weight`),
        ],
        [
          'infusion with epox at 20 degC',
          'lay skin with epox, 10 min',
          'wait 4 h',
          'lay a to c',
          'bag film_50',
          'infuse',
          'cure 24 h at 20 degC',
          'demould',
        ],
      ),
    );
    // 20 min for 1 kg, and drunk in 20 min: no pot over 1 kg. 1540 / 2 / 1.3 and 2970 / 3 / 1.3 of resin
    expect(pots.map((pot) => pot.split(':')[0])).toEqual(['epox', 'epox']);
    const resin = pots.map((pot) => Number(/resin ([\d.]+)/.exec(pot)?.[1]));
    expect(resin[0]).toBeCloseTo(1540 / 2 / 1.3, -0.5);
    expect(resin[1]).toBeCloseTo(2970 / 3 / 1.3, -0.5);
    const [a = 0, b = 0] = resin;
    expect(all).toMatch(new RegExp(`^resin ${Number((2 * a + 3 * b).toFixed(1))}, `));
    expect(await planOf(folder, 'pots', 'batch 4.51 kg at 20 degC')).toBe('0 %');
  });
});

it('a kit that was joined wet is not mixed again when it is laid', async () => {
  const plies = ['a', 'b', 'c'].map((name) => `ply ${name} biax at 0 deg, fibre 50 % by weight`);
  const { pots, mixed } = await told(
    'kit',
    recipe('kit', '1000 mm by 1000 mm', plies, [
      'hand with epox at 20 degC',
      'kit {\n lay a to b with epox, 4 min\n }',
      'lay kit, 4 min',
      'lay c, 4 min',
      'cure 24 h at 20 degC',
      'demould',
    ]),
  );
  // 600 g of cloth at 50 % take 600 g: 1.1 x 1200 g on the bench, 1.1 x 600 g on the tool; parts of 100:30
  expect(pots).toEqual(['epox: resin 1016, hardener 304.8', 'epox: resin 508, hardener 152.4']);
  expect(mixed).toBe('resin 1524, hardener 457.2');
});

it('thirteen grams of paste are a batch that the scale cannot dose', async () => {
  const bedded = recipe(
    'bedded',
    '500 mm by 500 mm',
    ['ply skin biax at 0 deg', 'core body foam_80 10 mm, rectangle 100 mm by 100 mm, bedded paste 100 g/m2'],
    ['hand with epox at 20 degC', 'lay skin to body', 'cure 24 h at 20 degC', 'demould'],
  );
  const paste = `paste paste "Paste" {\n  family polyester\n  catalyst perox 2 % by weight\n  density 0.8 g/cm3\n}\n
core foam_80 "Foam" {\n  density 80 kg/m3\n}\n`;
  const { folder, dispose } = folderOf({ 'book.layup': shared + paste + bedded });
  onTestFinished(dispose);
  const { out } = await laybook(folder, 'check', '.');
  // 1 g on 0.01 m2, a tenth held back: 1.1 g take 0.022 g
  expect(out).toMatch(/of paste takes .* of catalyst: one step of the scale/);
  // a scale that shows less is no reason to leave it out of the cup
  const { pots } = await told('bedded', paste + bedded);
  expect(pots.at(-1)).toBe('paste: resin 1.1, perox 0.022');
});

it('a record asks for each of several pots, and what they hold together is compared with the plan', async () => {
  const thick = ['a', 'b', 'c'].map((name) => `ply ${name} biax at 0 deg, fibre 60 % by weight`);
  const steps = [
    'infusion with epox at 20 degC',
    'lay a to c',
    'bag film_50',
    'infuse',
    'cure 24 h at 20 degC',
    'demould',
  ];
  const { folder } = await told('three', recipe('three', '2000 mm by 1000 mm', thick, steps));
  // (2400 g + 300 g) 1.1 in three pots: nothing but the batches is answered
  const answered: string[] = [];
  const call = ['record', 'three', '--number', '7', '--date', '2026-05-14'];
  const { asked } = await answering(folder, Array(40).fill(''), ...call);
  const pots = asked.filter((question) => question.includes('Batch of epox'));
  expect(pots.map((question) => question.slice(0, 11))).toEqual(['Pot 1 of 3.', 'Pot 2 of 3.', 'Pot 3 of 3.']);
  for (const question of asked) answered.push(question.includes('Batch of epox') ? '0.99, 20' : '');
  await answering(folder, answered, ...call);
  const { out } = await laybook(folder, 'records', 'three', '.');
  expect(out).toMatch(/2\.97 kg \(0 %\)/);
});
