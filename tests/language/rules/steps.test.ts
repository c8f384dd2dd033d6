import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { benchOf } from '../../../calc/figure/index.ts';
import { type AnalysisServices, analysisModule } from '../../../language/analysis/module.ts';
import { firstLater } from '../../../language/rules/kit/missing-step.ts';
import { stepsOf } from '../../../language/rules/kit/steps.ts';
import type { RecipeContext } from '../../../language/rules/rule.ts';
import { classesOf, precedes } from '../../../language/words/index.ts';
import { openBook } from '../../harness/book.ts';

const STACK = `  stack from tool bench {
    coat gel gelcoat_spray 500 um wet, spray
    ply a biax_440 at 0 deg, net
    core body foam_pvc_80 10 mm
    ply b biax_440 at 0 deg, net
  }`;

const recipe = (name: string, lines: readonly string[]): string =>
  `recipe ${name} {\n${STACK}\n  process infusion with epoxy_infusion_slow at 23 degC {\n${lines.map((line) => `    ${line}`).join('\n')}\n  }\n}\n`;

/** A line of the bench for each class of the partial order. */
const LINES: Readonly<Record<string, string>> = {
  lay: 'lay a',
  'lay coat': 'lay gel',
  'lay core': 'lay body',
  'lay cloth': 'lay b',
  'lay kit': 'lay kit',
  kit: 'kit {\n      lay a\n    }',
  'postcure free': 'postcure free {\n      ramp 10 K/h to 50 degC\n      hold 8 h\n    }',
  postcure: 'postcure flat {\n      hold 8 h at 50 degC\n    }',
  feed: 'feed f1 spiral_10 from (0 mm, 0 mm) to (100 mm, 0 mm)',
  vent: 'vent v1 spiral_10 perimeter, 50 mm outside',
  dry: 'dry a, 2 h at 50 degC',
  thaw: 'thaw',
  trim: 'trim net',
  cure: 'cure 24 h at 23 degC',
  vacuum: 'vacuum 50 mbar absolute',
  bond: 'bond a with epoxy_fillet',
  tint: 'tint grey_paste 2 % by weight',
  tape: 'tape sealant_12',
  clean: 'clean bench',
  release: 'release wax, 4 coats',
};
const lineOf = (step: string): string => LINES[step] ?? step;

/** Their lines need a stack of their own, or a masked flange: their rules' pages have them. */
const APART = ['seal core > lay core', 'thaw > lay', 'lay coat > tape'];
const both = precedes
  .filter(({ first, later }) => !APART.includes(`${first} > ${later}`))
  .map(({ first, later }, i) => ({ name: `p${i}`, first, later }));
const files = Object.fromEntries(
  both.flatMap(({ name, first, later }) => [
    [`${name}_right.layup`, recipe(`${name}_right`, [lineOf(first), lineOf(later)])],
    [`${name}_wrong.layup`, recipe(`${name}_wrong`, [lineOf(later), lineOf(first)])],
  ]),
);

const book = await openBook(
  { ...files, 'tool.layup': 'tool bench { flat 1 m by 1 m }\n' },
  { modules: [analysisModule as never] },
);
afterAll(() => book.dispose());
const { analysis } = book.services as typeof book.services & AnalysisServices;

/** Rules that tell of an order. */
const ORDER = [
  'order/before',
  'release/late',
  'tape/late',
  'peel/after-mesh',
  'tape/after-overspray',
  'resin/promoter-and-peroxide',
];

const toldIn = async (name: string): Promise<readonly string[]> =>
  (await analysis.findings(book.document(`${name}.layup`)))
    .map(({ rule }) => rule)
    .filter((rule) => ORDER.includes(rule));

const contextOf = (name: string): RecipeContext => {
  const shelf = analysis.shelf();
  const found = shelf.recipe(name);
  if (found === undefined) throw new Error(`no recipe ${name}`);
  const bench = benchOf(found, shelf);
  return { recipe: found, bench, ask: bench.ask.bind(bench) } as unknown as RecipeContext;
};

describe('the partial order of the steps', () => {
  it.each(both)('$first before $later', async ({ name, first, later }) => {
    expect(await toldIn(`${name}_right`), `${first}, then ${later}`).toEqual([]);
    expect(await toldIn(`${name}_wrong`), `${later}, then ${first}`).toHaveLength(1);
  });

  it('has no ring: nothing comes before itself', () => {
    for (const { first } of precedes) {
      const seen = new Set<string>();
      const follow = (step: string): void => {
        for (const pair of precedes) {
          if (!classesOf(step).includes(pair.first) || seen.has(pair.later)) continue;
          seen.add(pair.later);
          follow(pair.later);
        }
      };
      follow(first);
      expect([...seen], first).not.toContain(first);
    }
  });
});

describe('steps as the rules see them', () => {
  it('stand in the order of the text, each once', () => {
    fc.assert(
      fc.property(fc.constantFrom(...both), fc.boolean(), ({ name }, right) => {
        const paths = stepsOf(contextOf(`${name}_${right ? 'right' : 'wrong'}`)).map(({ step }) => step.path);
        expect(new Set(paths).size).toBe(paths.length);
        expect(paths).toEqual([...paths].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })));
      }),
      { numRuns: 40 },
    );
  });

  it('in a kit are of no class: they lie on the bench', () => {
    const at = both.find(({ first }) => first === 'kit');
    const inner = stepsOf(contextOf(`${at?.name}_right`)).filter(({ inside }) => inside?.verb === 'kit');
    expect(inner.map(({ step, classes }) => [step.verb, classes.size])).toEqual([['lay', 0]]);
  });

  it('have a place for a step that is missing: before the first that must follow it', () => {
    const at = both.find(({ first, later }) => first === 'release' && later === 'tape');
    expect(firstLater(contextOf(`${at?.name}_right`), 'release')?.step.verb).toBe('tape');
    expect(firstLater(contextOf(`${at?.name}_right`), 'demould')).toBeUndefined();
  });
});
