import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { isProblem, makeQuantity } from '../../calc/quantity/index.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { wordsAt } from '../../language/words/index.ts';
import { openBook } from '../harness/book.ts';
import { readPage } from '../harness/rule-page.ts';
import { placeFragment, standardShop } from '../harness/standard-book.ts';

/*
 * A habit of the shop is a word of the notation, and a usual value in a figure or a rule that it takes the place of. The two are
 * found here by reading the sources: whoever adds one side without the other, or changes a value on one side, is told.
 */
const root = path.join(import.meta.dirname, '../..');
const sources = ['calc', 'language/rules', 'language/view'].flatMap((folder) =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.includes('generated'))
    .map((file) => readFileSync(path.join(root, folder, file), 'utf8')),
);

/** `habit: 'pot'` with its value in SI, or a habit that is looked up by its name alone. */
const used = new Map<string, number | undefined>();
const number = (expression: string | undefined): number | undefined => {
  const terms = (expression ?? '')
    .replaceAll('_', '')
    .split('+')
    .map((term) => term.split('*').map(Number));
  const value = terms.reduce((sum, factors) => sum + factors.reduce((product, factor) => product * factor, 1), 0);
  return expression === undefined || Number.isNaN(value) ? undefined : value;
};
for (const text of sources) {
  for (const [, habit, expression] of text.matchAll(/habit: '(\w+)',\s+what:[\s\S]*?value: (?:\w+\(|\{ si: )([^,)]+)/g))
    used.set(habit ?? '', number(expression));
  for (const [, habit, expression] of text.matchAll(/\blength\(\s*'(\w+)',\s*'[^']*',\s*(-?[\d.]+)/g))
    used.set(habit ?? '', number(expression));
  for (const [, habit] of text.matchAll(/habits\?\.(\w+)/g))
    if (!used.has(habit ?? '')) used.set(habit ?? '', undefined);
}
const words = new Map(wordsAt('value of habit').map((word) => [word.word, word]));
const named = new Set(wordsAt('shop').find(({ word }) => word === 'habit')?.takes?.[0]?.words);

describe('habits of the shop', () => {
  it('are found in the sources', () => expect(used.size).toBeGreaterThan(50));

  it('are words of the notation, each of them used', () => {
    expect([...used.keys()].filter((habit) => !words.has(habit)).sort()).toEqual([]);
    expect([...words.keys()].filter((habit) => !used.has(habit)).sort()).toEqual([]);
    expect([...words.keys()].filter((habit) => !named.has(habit)).sort()).toEqual([]);
  });

  it.each([...used].filter(([habit, value]) => value !== undefined && words.has(habit)))(
    '%s: the value in the table is the one that is taken',
    (habit, value) => {
      const [, typed, unit] = /^(-?[\d.]+) ?([^\s]*)/.exec(words.get(habit)?.default ?? '') ?? [];
      const made = unit === '' || unit === undefined ? { si: Number(typed) } : makeQuantity(Number(typed), unit);
      if (isProblem(made)) throw new Error(String(made.message));
      expect(made.si).toBeCloseTo(value ?? Number.NaN, 9);
    },
  );
});

/** How often a rule is told of in the fragments of its page, in a shop with a habit of its own. */
async function toldOnPage(rule: string, habit: string, [from, to]: readonly string[] = []): Promise<number> {
  const { fragments } = readPage(path.join(root, `language/rules/${rule}.md`));
  let told = 0;
  for (const { code } of fragments.filter(({ code }) => !/^shop\b/m.test(code))) {
    const { files } = placeFragment(from === undefined ? code : code.replaceAll(from, to ?? ''));
    const shop = standardShop.replace(/\}\n$/, `  ${habit}\n}\n`);
    const book = await openBook<AnalysisServices>({ ...files, 'shop.layup': shop }, { modules: [analysisModule] });
    const found = await book.services.analysis.findings(book.document('fragment.layup'));
    book.dispose();
    told += found.filter((finding) => finding.rule === rule).length;
  }
  return told;
}

/** A prepreg that says no time to thaw, before the tool of a page. */
const coldPrepreg = `prepreg carbon_prepreg_200 {
  fibre carbon_hs
  layers woven 0 deg 100 g/m2, 90 deg 100 g/m2
  resin 42 % by weight
  density 1220 kg/m3
  freezer 12 months at -18 degC
}

tool hot_plate "`;

describe('a habit of the shop takes the place of the common value', () => {
  it.each([
    ['bond/fillet-missing', 'habit flat_corner 60 deg', 'less'],
    ['caul/no-edge-relief', 'habit caul 8 mm', 'more'],
    ['core/bag-crush', 'habit core_pressed 90 %', 'less'],
    ['core/coarse-perforation', 'habit perforation 200 mm', 'less'],
    ['core/no-chamfer', 'habit chamfer 15 deg', 'more'],
    ['core/no-chamfer', 'habit square_edge 60 mm', 'less'],
    ['core/not-bedded', 'habit mat_bed 900 g/m2', 'more', ['biax_440', 'csm_450']],
    ['core/not-perforated', 'habit thin_core 50 mm', 'less'],
    ['cure/no-postcure', 'habit cure_near 40 K', 'less'],
    ['cure/ramp', 'habit thick_prepreg 0.2 mm', 'more'],
    ['fibre/impossible', 'habit packed_hand_mat 50 %', 'less'],
    ['insert/oversize-and-plug', 'habit oversize_times 4', 'more'],
    ['insert/thicker-than-core', 'habit level 20 mm', 'less'],
    ['insert/touches-edge', 'habit edge 0 mm', 'less'],
    ['join/overlap-short', 'habit overlap 1 mm', 'less'],
    ['ply/corner-too-tight', 'habit inside_radius 1 mm', 'less'],
    ['ply/step-in-stack', 'habit one_line 5 kg/m2', 'less'],
    ['prepreg/no-thaw', 'habit thaw 24 h', 'more', ['tool hot_plate "', coldPrepreg]],
    ['record/different-temperature', 'habit warmth 30 K', 'less'],
    ['stack/ends-on-roving', 'habit roving 2 kg/m2', 'less'],
    ['stack/print', 'habit over_cure 80 K', 'less'],
    ['stack/roving-on-roving', 'habit roving 2 kg/m2', 'less'],
    ['stack/thin-over-core', 'habit stepped_glass 900 g/m2', 'more'],
    ['stack/thin-over-core', 'habit stepped_carbon 900 g/m2', 'more', ['inner biax_440', 'inner carbon_twill_200']],
    ['tool/no-draft', 'habit deep_tool 500 mm', 'less'],
    ['tool/no-flange', 'habit flange 1 mm', 'less'],
    ['wrap/step', 'habit one_line 5 kg/m2', 'less'],
  ] as const)(
    'on the page of %s: `%s`',
    async (rule, habit, change, other: readonly string[] = []) => {
      const usual = await toldOnPage(rule, 'currency EUR', other);
      const own = await toldOnPage(rule, habit, other);
      if (change === 'more') expect(own).toBeGreaterThan(usual);
      else expect(own).toBeLessThan(usual);
      // a page of many fragments opens a book for each of them, twice
    },
    30_000,
  );

  const part = (habit: string, rest: string): Record<string, string> => ({
    'a.layup': `shop "a" {
  ${habit}
}
tool bench {
  flat 2 m by 1 m
}
recipe r {
  part {
    outline rectangle 600 mm by 400 mm
    sides 80 mm at 2 deg, radius 12 mm
  }
  stack from tool bench {
${rest}
  }
}
`,
  });
  const bonded = `    core body balsa_150 12 mm
  }
  process hand with epoxy_laminating_slow at 23 degC {
    lay body
    bond body with epoxy_fillet, 6 mm
    drill 2 holes 8 mm in body, oversize 14 mm then fill epoxy_fillet`;
  const bagged = `    ply show carbon_twill_200 at 0 deg
  }
  process bagged with epoxy_laminating_medium at 20 degC {
    lay stack, resin 40 % by weight
    perforated film_p3, 40 mm past edge
    breather poly_150, 80 mm past edge
    bag film_50, pleats 14 of 40 mm
    vacuum 700 mbar gauge
    cure 24 h at 20 degC
    demould`;

  it.each([
    ['bond/line-thickness', 'habit bond_thinnest 0.2 mm', 'habit bond_thickest 8 mm', bonded],
    ['insert/oversize-and-plug', 'habit oversize 8 mm', 'habit oversize 4 mm', bonded],
    ['fibre/bag-bleeds-dry', 'habit hard_bag 600 mbar', 'habit hard_bag 750 mbar', bagged],
    ['tool/no-draft', 'habit draft 3 deg', 'habit draft 2 deg', bagged],
  ])('%s fires with `%s`, and not with `%s`', async (rule, fires, silent, rest) => {
    for (const [habit, told] of [[fires, true] as const, [silent, false] as const]) {
      const book = await openBook<AnalysisServices>(part(habit, rest), { modules: [analysisModule] });
      const found = await book.services.analysis.findings(book.document('a.layup'));
      book.dispose();
      expect(found.some((finding) => finding.rule === rule)).toBe(told);
    }
  });
});
