/** What is mixed for each step of a recipe, against what the report says is mixed in all. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { root } from '../harness/sources.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

const sample = path.join(root, 'extension/sample');

/** The page of the sheet as words. */
async function page(name: string, files: Readonly<Record<string, string>> = {}): Promise<string> {
  const { folder, dispose } = folderOf(files);
  onTestFinished(dispose);
  const { code } = await laybook(
    folder,
    'sheet',
    name,
    Object.keys(files).length > 0 ? '.' : sample,
    '--out',
    'sheet.html',
  );
  expect(code).toBe(0);
  return readFileSync(path.join(folder, 'sheet.html'), 'utf8')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
}

it('what was laid wet is not mixed again for the infusion, which alone feeds mesh, lines and pot', async () => {
  const { out } = await laybook(sample, 'report', 'hatch_lid', '.', '--format', 'json');
  const [own]: { readonly figures: Readonly<Record<string, { readonly value: number }>> }[] = JSON.parse(out).resins;
  const pots = [...(await page('hatch_lid')).matchAll(/Mix vinylester_infusion: .*? resin ([\d.]+) g/g)];
  const [skin = 0, infused = 0, ...more] = pots.map(([, mass]) => Number(mass));
  expect(more).toEqual([]);
  // by hand: 257 g in the skin and 10 % held back; 570 g - 257 g in the rest, 872 g thrown away, and 10 % of both
  expect(Math.abs(skin - 257 * 1.1)).toBeLessThan(1);
  expect(Math.abs(infused - (570 - 257 + 872) * 1.1)).toBeLessThan(2);
  expect(skin + infused).toBeCloseTo((own?.figures.resin_to_mix?.value ?? 0) * 1000, 0);
  // the step says what its pot holds
  expect(/Infuse\..*?resin ([\d.]+) kg/.exec(await page('hatch_lid'))?.[1]).toBe('1.303');
});

it('several pots have their times in their own table, and no blank for one of them beside it', async () => {
  const text = await page('hatch_lid');
  const [, gel = ''] = /Lay gel\.(.*?)Check: wet film/.exec(text) ?? [];
  expect(gel.match(/mixed at/g)).toHaveLength(1);
  expect(gel).toMatch(/started .*ended .*gel seen at/);
  const [, skin = ''] = /Lay skin\.(.*?)Wait 4 h/.exec(text) ?? [];
  expect(skin.match(/mixed at/g)).toHaveLength(1);
});

it('what is joined in a kit occupies the bench and leaves the tool free', async () => {
  const text = await page('sled_deck');
  const [, kit = ''] = /Join on the bench:(.*?)Lay the kit\./.exec(text) ?? [];
  expect(kit.match(/occupies \w+/g)).toEqual(['occupies bench', 'occupies bench', 'occupies bench']);
  expect(/Lay the kit\..*?(occupies \w+)/.exec(text)?.[1]).toBe('occupies tool');
});

it('a section that is drawn as thick as it is says so in words', async () => {
  const block = `notation 1
recipe block {
  part { outline circle 100 mm }
  stack { core body foam_80 30 mm }
}
`;
  const text = await page('block', { 'block.layup': block });
  expect(text).toContain('Section of block along its middle line, to scale');
  expect(text).toContain('Lengths and thickness are to scale.');
  expect(text).not.toContain('1 times');
});

it('a build that was mixed as the sheet says is on its plan', async () => {
  const { folder, dispose } = folderOf({});
  onTestFinished(dispose);
  cpSync(sample, folder, { recursive: true });
  const record = 'notation 1\n\nrecord hatch_lid 2026-11-25 "no. 1" {\n  revision 6\n  batch 1.303 kg at 20 degC\n}\n';
  writeFileSync(path.join(folder, 'built.layup'), record);
  const { out } = await laybook(folder, 'records', 'hatch_lid', '.');
  expect(out).toMatch(/1\.303 kg \([+-]?0 %\)/);
});
