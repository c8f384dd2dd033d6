import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { isProblem, makeQuantity } from '../../calc/quantity/index.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { wordsAt } from '../../language/words/index.ts';
import { openBook } from '../harness/book.ts';

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

describe('a habit of the shop takes the place of the common value', () => {
  const bonded = (habit: string): Record<string, string> => ({
    'a.layup': `shop "a" {
  ${habit}
}
tool bench {
  flat 2 m by 1 m
}
recipe r {
  part {
    outline rectangle 600 mm by 400 mm
  }
  stack from tool bench {
    core body balsa_150 12 mm
  }
  process hand with epoxy_laminating_slow at 23 degC {
    lay body
    bond body with epoxy_fillet, 6 mm
    drill 2 holes 8 mm in body, oversize 14 mm then fill epoxy_fillet
  }
}
`,
  });
  const rulesIn = async (files: Record<string, string>): Promise<string[]> => {
    const book = await openBook<AnalysisServices>(files, { modules: [analysisModule] });
    const found = await book.services.analysis.findings(book.document('a.layup'));
    book.dispose();
    return found.map(({ rule }) => rule);
  };

  it.each([
    ['bond/line-thickness', 'habit bond_thinnest 0.2 mm', 'habit bond_thickest 8 mm'],
    ['insert/oversize-and-plug', 'habit oversize 8 mm', 'habit oversize 4 mm'],
  ])('%s fires with `%s`, and not with `%s`', async (rule, fires, silent) => {
    expect(await rulesIn(bonded(fires))).toContain(rule);
    expect(await rulesIn(bonded(silent))).not.toContain(rule);
  });

  const deep = (habit: string): Record<string, string> => ({
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
    ply show carbon_twill_200 at 0 deg
  }
  process bagged with epoxy_laminating_medium at 20 degC {
    lay stack, resin 40 % by weight
    perforated film_p3, 40 mm past edge
    breather poly_150, 80 mm past edge
    bag film_50, pleats 14 of 40 mm
    vacuum 700 mbar gauge
    cure 24 h at 20 degC
    demould
  }
}
`,
  });

  it.each([
    ['fibre/bag-bleeds-dry', 'habit hard_bag 600 mbar', 'habit hard_bag 750 mbar'],
    ['tool/no-draft', 'habit draft 3 deg', 'habit draft 2 deg'],
  ])('%s fires with `%s`, and not with `%s`', async (rule, fires, silent) => {
    expect(await rulesIn(deep(fires))).toContain(rule);
    expect(await rulesIn(deep(silent))).not.toContain(rule);
  });
});
