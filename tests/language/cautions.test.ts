/** What can hurt: the table, where it is shown, and that only what applies is shown. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { rules } from '../../language/rules/generated/rules.ts';
import { cautionOfPage } from '../../language/view/cautions.ts';
import { DEFERRAL, hazards } from '../../language/words/cautions.ts';
import { verb, wordAt, wordsAt } from '../../language/words/index.ts';
import { laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const cautionsIn = async (recipe: string, format: 'text' | 'markdown'): Promise<string> => {
  const { code, out } = await laybook(root, 'report', recipe, 'extension/sample', '--format', format);
  expect(code).toBe(0);
  const [, part = ''] = /\n(?:## )?Cautions\n([\s\S]*?)\n\n(?:## )?(?:Time|[A-Z][a-z ]+)\n/.exec(out) ?? [];
  return (format === 'text' ? part : out.slice(out.indexOf('## Cautions'))).replace(/\s+/g, ' ');
};

describe('the table of hazards', () => {
  it('holds every hazard that a workshop is warned of', () => {
    expect(hazards.map(({ name }) => name)).toEqual([
      'styrene',
      'peroxide',
      'epoxy',
      'glass_dust',
      'carbon_dust',
      'dust',
      'spray_adhesive',
      'runaway',
      'static',
      'vacuum',
      'heat',
      'lifting',
      'solvent',
    ]);
  });

  it.each(hazards.map((each) => [each.name, each] as const))(
    '%s speaks of verbs, families, kinds and rules that there are',
    (_name, { applies, rules: named }) => {
      const entryKinds = wordsAt('book').map(({ word }) => word);
      for (const { verbs, families = [], kinds = [] } of applies) {
        expect(verbs.filter((word) => verb(word) === undefined && wordAt(word, 'cure') === undefined)).toEqual([]);
        expect(families.filter((word) => wordAt(word, 'value of family') === undefined)).toEqual([]);
        expect(
          kinds.filter((word) => wordAt(word, 'value of kind') === undefined && !entryKinds.includes(word)),
        ).toEqual([]);
      }
      const known = new Set(rules.map((rule) => rule.name));
      expect(named.filter((name) => !known.has(name))).toEqual([]);
    },
  );

  it('says of every limit who set it, when, and how it was come by', () => {
    const limits = hazards.flatMap((each) => each.limits);
    expect(limits.length).toBeGreaterThan(10);
    for (const { agency, date, mark, values } of limits) {
      expect(agency).toMatch(/OSHA|NIOSH|ACGIH|HSE|Sweden/);
      expect(date).toBeGreaterThan(1990);
      expect(['read on a public page', 'from memory']).toContain(mark);
      for (const { ppm, says } of values) expect(ppm ?? says).toBeTruthy();
    }
  });
});

describe('pages of rules', () => {
  it.each(hazards.flatMap((each) => each.rules.map((rule) => [rule, each] as const)))(
    '%s carries the caution of the table',
    (rule, each) => {
      const page = readFileSync(path.join(root, `language/rules/${rule}.md`), 'utf8').replace(/\s+/g, ' ');
      expect(page).toContain(cautionOfPage(each));
    },
  );
});

describe('a report', () => {
  it('tells styrene with the limits of the agencies where polyester is laid', async () => {
    for (const format of ['text', 'markdown'] as const) {
      const told = await cautionsIn('drip_tray', format);
      expect(told).toContain('Styrene: extraction on');
      expect(told).toContain(
        'NIOSH (US), recommended: 50 ppm (about 210 mg/m3) over up to 10 h (2007, read on a public page)',
      );
      expect(told).toContain('HSE (UK), EH40/2005 4th ed.: 100 ppm (about 430 mg/m3) over 8 h');
      expect(told).toContain(DEFERRAL);
    }
  });

  it.each([
    [
      'drip_tray',
      ['Styrene', 'Peroxide', 'Glass dust', 'Solvent'],
      ['Epoxy', 'Carbon', 'Full vacuum', 'Spray', 'Heat'],
    ],
    [
      'sled_deck',
      ['Epoxy', 'Glass dust', 'Carbon dust', 'Full vacuum', 'Spray', 'A pot', 'Heat'],
      ['Styrene', 'Peroxide'],
    ],
    [
      'side_panel',
      ['Epoxy', 'Carbon dust', 'Full vacuum', 'Heat'],
      ['Styrene', 'Peroxide', 'Glass dust', 'Spray', 'A pot'],
    ],
    ['hatch_lid', ['Styrene', 'Peroxide', 'Epoxy', 'Glass dust', 'Spray'], ['Carbon']],
  ] as const)('of %s tells what applies and nothing else', async (recipe, has, hasNot) => {
    const told = await cautionsIn(recipe, 'text');
    for (const word of has) expect(told).toContain(`${word}`);
    for (const word of hasNot) expect(told).not.toContain(`${word}`);
  });
});
