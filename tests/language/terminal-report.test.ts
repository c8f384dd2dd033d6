/** `laybook report`: the same figures for people, for a wiki and for machines. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { PART_FIGURES } from '../../calc/report.ts';
import { widthOf } from '../../language/terminal/width.ts';
import { partFigureNames } from '../../language/view/figure-names.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const sample = 'extension/sample';
const schema = JSON.parse(readFileSync(path.join(root, 'language/terminal/schemas/report.json'), 'utf8'));
const valid = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

interface Told {
  readonly value?: number;
  readonly unit?: string;
  readonly cannot?: readonly { readonly text: string; readonly at?: { readonly file: string } }[];
}
interface Reported {
  readonly size: string | null;
  readonly quantity: number;
  readonly figures: Readonly<Record<string, Told>>;
  readonly layers: readonly { readonly name: string; readonly figures: Readonly<Record<string, Told>> }[];
  readonly steps: readonly { readonly verb: string; readonly depth: number }[];
  readonly resins: readonly {
    readonly mix: { readonly parts: readonly { readonly what: string; readonly mass: Told }[] };
  }[];
  readonly expects: readonly { readonly verdict: string }[];
  readonly cautions: {
    readonly deferral: string;
    readonly hazards: readonly {
      readonly name: string;
      readonly steps: readonly string[];
      readonly limits: readonly {
        readonly agency: string;
        readonly date: number;
        readonly values: readonly { readonly share?: Told; readonly concentration?: Told }[];
      }[];
    }[];
  };
}

async function reported(folder: string, ...args: string[]): Promise<Reported> {
  const { code, out, err } = await laybook(folder, 'report', ...args, '--format', 'json');
  expect([code, err]).toEqual([0, '']);
  const told = JSON.parse(out);
  expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
  return told;
}

describe('a report as JSON', () => {
  it('adds up: the layers are the part, the kinds of cost are the cost', async () => {
    const { figures, layers } = await reported(root, 'sled_deck', sample);
    const of = (name: string): number => figures[name]?.value ?? Number.NaN;
    const masses = layers.map((layer) => layer.figures.mass?.value ?? Number.NaN);
    expect(masses.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(of('mass'), 6);
    expect(layers.reduce((sum, layer) => sum + (layer.figures.share?.value ?? Number.NaN), 0)).toBeCloseTo(1, 8);
    const kinds = ['material', 'consumable', 'labour', 'mould', 'overhead'].map((kind) => of(`${kind}_cost`));
    expect(kinds.reduce((sum, cost) => sum + cost, 0)).toBeCloseTo(of('cost'), 6);
    expect(figures.mass?.unit).toBe('kg');
    expect(figures.thickness?.unit).toBe('m');
    expect(figures.leak_limit_rise?.unit).toBe('kg/m.s2');
    expect(figures.cost?.unit).toBe('EUR');
  });

  it('tells what can hurt, with the limits of each agency and their dates', async () => {
    const { cautions } = await reported(root, 'drip_tray', sample);
    expect(cautions.deferral).toContain('local rules');
    const styrene = cautions.hazards.find(({ name }) => name === 'styrene');
    expect(styrene?.steps).toContain('lay');
    expect(styrene?.limits.length).toBeGreaterThan(3);
    for (const { agency, date } of styrene?.limits ?? [])
      expect([agency.length > 2, date > 1990]).toEqual([true, true]);
    // 100 ppm of styrene are 426 mg/m3: NIOSH Pocket Guide, from memory
    const hundred = styrene?.limits
      .flatMap(({ values }) => values)
      .find(({ share }) => Math.abs((share?.value ?? 0) - 1e-4) < 1e-9);
    expect(hundred?.concentration).toEqual({ value: 0.00043, unit: 'kg/m3' });
    const dry = await reported(root, 'sled_deck', sample);
    expect(dry.cautions.hazards.map(({ name }) => name)).not.toContain('styrene');
  });

  it('weighs the parts of the mix in steps of the balance, in the ratio of the resin', async () => {
    const { resins } = await reported(root, 'sled_deck', sample);
    const parts = resins[0]?.mix.parts ?? [];
    const mass = (what: string): number => parts.find((part) => part.what === what)?.mass.value ?? Number.NaN;
    // 100:31 by weight
    expect(mass('hardener') / mass('resin')).toBeCloseTo(0.31, 3);
    for (const part of parts) expect(Math.abs(((part.mass.value ?? 0) * 1e4) % 1)).toBeLessThan(1e-6);
  });

  it('tells a size apart from the recipe as written', async () => {
    const whole = await reported(root, 'sled_deck', sample);
    const short = await reported(root, 'sled_deck', sample, '--size', 'short');
    expect([whole.size, short.size]).toEqual([null, 'short']);
    expect([whole.quantity, short.quantity]).toEqual([12, 4]);
    expect(short.figures.mass?.value).toBeLessThan(whole.figures.mass?.value ?? 0);
    expect(short.layers.map(({ name }) => name)).not.toContain('pad');
  });

  it('says what is missing and where, and still tells the rest', async () => {
    const text = readFileSync(path.join(root, sample, 'sled_deck.layup'), 'utf8').replace(
      'core body foam_80 20 mm',
      'core body foam_80 ?',
    );
    const files = Object.fromEntries(
      ['shop', 'tools', 'materials'].map((name) => [
        `${name}.layup`,
        readFileSync(path.join(root, sample, `${name}.layup`), 'utf8'),
      ]),
    );
    const made = folderOf({ ...files, 'deck.layup': text });
    const { figures, layers } = await reported(made.folder, 'sled_deck');
    const told = await laybook(made.folder, 'report', 'sled_deck');
    made.dispose();
    expect(figures.mass?.cannot?.[0]?.text).toMatch(/thickness of body/);
    expect(figures.mass?.cannot?.[0]?.at?.file).toBe('deck.layup');
    expect(figures.part_area?.value).toBeGreaterThan(0.4);
    expect(layers.find(({ name }) => name === 'inner')?.figures.mass?.value).toBeGreaterThan(0.3);
    expect(told.out).toMatch(/What cannot be told[\s\S]*thickness of body[\s\S]*deck\.layup:\d+/);
  });

  it('is the same bytes in every locale and time zone, and at every call', async () => {
    const before = { TZ: process.env.TZ, LANG: process.env.LANG };
    const outs: string[] = [];
    for (const [zone, lang] of [
      ['UTC', 'en_GB.UTF-8'],
      ['Pacific/Kiritimati', 'de_DE.UTF-8'],
    ]) {
      Object.assign(process.env, { TZ: zone, LANG: lang });
      outs.push((await laybook(root, 'report', 'sled_deck', sample, '--format', 'json')).out);
    }
    for (const [name, value] of Object.entries(before)) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
    expect(outs[1]).toBe(outs[0]);
  });
});

describe('a report as text', () => {
  it('fits 100 columns, for every recipe of the sample', async () => {
    for (const recipe of ['sled_deck', 'drip_tray', 'first_board', 'box_lid', 'small_fairing', 'table_leg']) {
      const { code, out } = await laybook(root, 'report', recipe, sample);
      expect([recipe, code]).toEqual([recipe, 0]);
      const wide = out.split('\n').filter((line) => widthOf(line) > 100);
      expect(wide).toEqual([]);
      expect(out).not.toMatch(/NaN|Infinity|undefined|\{\w+\}/);
      expect(out).toContain('certifies nothing');
    }
  });

  it('tells the verdict of each expectation and what stands open', async () => {
    const { out } = await laybook(root, 'report', 'first_board', sample);
    expect(out).toMatch(/mass <= 1\.2 kg +not met +[\d.]+ kg +by [\d.]+ k?g/);
    expect(out).toMatch(/Open findings in extension\/sample\/first_try\.layup: \d+ errors/);
  });

  it('keeps control characters of names and texts from the screen', async () => {
    const made = folderOf({
      'a.layup': 'recipe r "a\u001b]0;x\u0007\u202eb" {\n  part {\n    outline circle 340 mm\n  }\n}\n',
    });
    for (const format of ['text', 'markdown', 'json']) {
      const { out } = await laybook(made.folder, 'report', 'r', '--format', format);
      expect(out).toContain('a]0;xb'.slice(0, 1));
      expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
    }
    made.dispose();
  });
});

describe('a report as Markdown', () => {
  it('holds a table for the layers, and texts of the file mean nothing to the page', async () => {
    const made = folderOf({
      'a.layup': 'recipe r "[x](http://a) <b> | *c*" {\n  part {\n    outline circle 340 mm\n  }\n}\n',
    });
    const { out } = await laybook(made.folder, 'report', 'r', '--format', 'markdown');
    made.dispose();
    expect(out.split('\n')[0]).toBe('# r: \\[x\\](http://a) &lt;b\\> \\| \\*c\\*, 1 part');
    const whole = await laybook(root, 'report', 'sled_deck', sample, '--format', 'markdown');
    const rows = whole.out.split('\n').filter((line) => line.startsWith('| '));
    expect(rows.some((row) => /^\| outer \| triax\\_680 \| [\d.]+ m2 \|/.test(row))).toBe(true);
    // every row of a table has the cells of its head
    for (const block of whole.out.split('\n\n').filter((part) => part.startsWith('|'))) {
      const cells = block.split('\n').map((row) => row.replace(/\\\|/g, '').split('|').length);
      expect(new Set(cells).size).toBe(1);
    }
  });
});

describe('wrong calls', () => {
  it('name what there is', async () => {
    const wrong = await laybook(root, 'report', 'sled_dek', sample);
    expect([wrong.code, wrong.out]).toEqual([2, '']);
    expect(wrong.err).toContain('perhaps sled_deck');
    const size = await laybook(root, 'report', 'sled_deck', sample, '--size', 'shrt');
    expect(size.code).toBe(2);
    expect(size.err).toContain('perhaps short');
  });
});

it('every public figure has a name for people', () => {
  expect(PART_FIGURES.map(({ name }) => name).filter((name) => !(name in partFigureNames))).toEqual([]);
  expect(Object.keys(partFigureNames).filter((name) => !PART_FIGURES.some((figure) => figure.name === name))).toEqual(
    [],
  );
});

describe('a report as html', () => {
  it('is a build sheet to print: steps with boxes to tick, pots, pieces; it loads nothing and runs nothing', async () => {
    const { out, code } = await laybook(sample, 'report', 'sled_deck', '--format', 'html');
    expect(code).toBe(0);
    expect(out).toMatch(/^<!DOCTYPE html>/);
    expect(out).toContain("default-src 'none'");
    expect(out.match(/class="box"/g)?.length).toBeGreaterThan(10);
    for (const words of ['outer', 'triax_680', 'sealant_12', 'epoxy']) expect(out).toContain(words);
    expect(out).not.toMatch(/<script|<link|\bsrc="?https?:/);
  });
});
