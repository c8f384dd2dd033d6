/** What steps of handwork take, and how the sheet tells them: paste by its area or its corner, hands by what is worked on. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { folderOf, laybook } from '../harness/terminal.ts';

const BOOK = `notation 1
shop "A" { currency EUR
  labour 30 EUR/h
  habit leak 3 mbar in 5 min
}
tool bench { flat 1600 mm by 900 mm }
recipe box {
  part {
    outline rectangle 1000 mm by 400 mm
    ends heel to nose
    zone web rectangle 300 mm by 20 mm, centred at (0 mm, 0 mm)
  }
  stack from tool bench {
    ply a biax_440 at 0 deg
    core body foam_pvc_80 10 mm
    ply b biax_440 at 0 deg
  }
  process bagged with epoxy_laminating_medium at 21 degC {
    mask flange with masking_25
    cut
    score body
    lay a
    bed body with epoxy_fillet, 1500 g/m2
    bag down body, vacuum 300 mbar gauge
    lay b
    caul alu_2, 3 mm short of edge, release wax 3 coats
    wait until gel
    check wet_film 400 um to 600 um
    leak test
    fill joints with epoxy_fillet
    cure 24 h at 21 degC
    bond web with epoxy_fillet, at 90 deg, fillet 10 mm both sides, 410 mm long
    fillet 10 mm with epoxy_fillet, along nose
    fillet 8 mm both sides with epoxy_fillet, along web
    pour epoxy_fillet in web
  }
}
recipe thin {
  part { outline rectangle 1000 mm by 400 mm
    ends heel to nose
  }
  stack from tool bench { ply a biax_440 at 0 deg }
  process infusion with epoxy_infusion_slow at 23 degC {
    release wax
    dry a, 2 h
    lay a
    peel nylon_85
    mesh mesh_130
    vent v1 spiral_10 along nose, 30 mm outside
    thaw glass_prepreg_300
    debulk
    postcure flat 2 h at 60 degC
    postcure on tool {
      hold 1 h at 50 degC
    }
  }
}
`;

async function told(command: string, recipe: string, ...more: string[]): Promise<string> {
  const { folder, dispose } = folderOf({ 'book.layup': BOOK });
  onTestFinished(dispose);
  const { out } = await laybook(folder, command, recipe, '.', ...more);
  const text = more.length === 0 ? out : readFileSync(path.join(folder, 'sheet.html'), 'utf8').replace(/<[^>]*>/g, ' ');
  return text.replace(/\s+/g, ' ');
}

it('handwork takes what it is done on, and paste by what the step says of it', async () => {
  const report = await told('report', 'box');
  for (const line of [
    'cut pieces 3 12 min',
    'score body face 0.4 m2 3.2 min',
    // 1500 g/m2 on 0.4 m2
    'bed body with epoxy_fillet face 0.4 m2, paste 600 g',
    // nothing that is called `body` is bought for it
    'bag down body face 0.4 m2 20 min 60 min ',
    // 2 corners of 410 mm, (10 mm)^2 (1 - pi / 4) each, of an epoxy of 1.12 kg/l
    'joint 410 mm, paste 19.7 g',
    // three times 10 g/m2 on 994 mm by 394 mm of plate
    'caul alu_2 release 11.7 g',
    // across the end: 400 mm
    'joint 400 mm, paste 9.61 g',
    // round the zone, 640 mm, on both sides
    'joint 640 mm, paste 19.7 g',
  ])
    expect(report).toContain(line);
  expect(report).toMatch(/consumables [\d.]+ EUR/);
}, 30_000);

it('a line along an end runs across the part there; a prepreg thaws as long as it says', async () => {
  const report = await told('report', 'thin');
  // four coats of 10 g/m2 on the part and 100 mm of flange: 0.4 + 2.8 * 0.1 + pi * 0.01 m2
  expect(report).toContain('release wax release 28.5 g');
  expect(report).toContain('vent v1 spiral_10 along nose vent 400 mm');
  expect(report).toMatch(/thaw glass_prepreg_300 2 min 6 h/);
}, 30_000);

it('the sheet names the paste where paste is meant, and the numbers of the shop where the step has none', async () => {
  const sheet = await told('sheet', 'box', '--out', 'sheet.html');
  for (const line of [
    'Mask the flange, with masking_25.',
    'Cut all pieces by the cut list and mark each.',
    'Bed body in epoxy_fillet, 1500 g/m2; press until it squeezes out all round.',
    'Pull full vacuum, shut the pump off: at most 3 mbar in 5 min.',
    'Fill the joints with epoxy_fillet.',
    'Check: wet film 0.4 mm to 0.6 mm.',
    'Bond web: butter both faces with epoxy_fillet and close; fillet of 10 mm radius in the corner.',
    'Fillet, radius 10 mm, of epoxy_fillet.',
    'Pour epoxy_fillet, into web.',
    'About 600 g of it is used',
  ])
    expect(sheet).toContain(line);
  expect(sheet).toMatch(/Wait until gel, about [\d.]+ (min|h): it no longer flows\./);
}, 30_000);

it('what a step leaves to the trade or to its material is told on the sheet', async () => {
  const sheet = await told('sheet', 'thin', '--out', 'sheet.html');
  for (const line of [
    'Apply wax, 4 coats; let each coat dry.',
    'Dry a, 120 min, lay it at once.',
    'Peel ply nylon_85, 50 mm past the edge.',
    'Flow mesh mesh_130, 40 mm short of the edge.',
    'Thaw glass_prepreg_300 with its bag shut, 6 h.',
    'Debulk 20 min under full vacuum.',
    'Postcure flat, 120 min, at 60 degC.',
    'Postcure on tool.',
  ])
    expect(sheet).toContain(line);
}, 30_000);

it('a step is explained with what it needs, occupies and uses up, and by the spellings of other shops', async () => {
  const { folder, dispose } = folderOf({});
  onTestFinished(dispose);
  const explained = async (what: string) => (await laybook(folder, 'explain', what)).out.replace(/\s+/g, ' ');
  const fillet = await explained('fillet');
  for (const part of [
    'On the sheet: Fillet, radius',
    'Occupies: people.',
    'Uses up: paste, length (along the corner).',
  ])
    expect(fillet).toContain(part);
  expect(await explained('leak test')).toContain('It comes before mix, infuse');
  expect(await explained('medium')).toContain('Flow mesh {material}');
}, 30_000);
