import { afterEach, describe, expect, it } from 'vitest';
import type { Layer } from '../../calc/model/index.ts';
import { isProblem, makeQuantity, namedDimension, type Quantity, unitsOf } from '../../calc/quantity/index.ts';
import { NAMED } from '../../calc/quantity/names.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { sayText } from '../../language/view/text.ts';
import { openBook, type TestBook } from '../harness/book.ts';
import { standardShop, standardTools } from '../harness/standard-book.ts';

/** Units as they are typed in a book, of one word or two, and slopes: what the table of units knows, the notation reads. */
let book: TestBook<AnalysisServices>;
afterEach(() => book.dispose());

async function read(text: string) {
  book = await openBook<AnalysisServices>(
    { 'shop.layup': standardShop, 'tools.layup': standardTools, 'a.layup': text },
    { modules: [analysisModule] },
  );
  const { analysis } = book.services;
  const findings = await analysis.findings(book.document('a.layup'));
  const recipe = analysis.shelf().recipe('typed');
  return {
    told: findings
      .map(({ rule, message }) => `${rule}: ${sayText(message)}`)
      .filter((line) => /^(unit|line)\//.test(line)),
    recipe,
    lets: (recipe?.lets ?? {}) as Readonly<Record<string, Quantity>>,
  };
}

const si = (number: number, unit: string): number => {
  const made = makeQuantity(number, unit);
  if (isProblem(made)) throw new Error(unit);
  return made.si;
};

describe('every unit that is offered can be typed', () => {
  it.each(NAMED.filter(({ units }) => units !== '').map(({ name }) => name))('for %s', async (name) => {
    const symbols = unitsOf(name, 'GBP').map(({ symbol }) => symbol);
    expect(symbols.length).toBeGreaterThan(0);
    const { told, lets } = await read(
      `recipe typed {\n${symbols.map((symbol, i) => `  let v${i} = 3 ${symbol}`).join('\n')}\n}`,
    );
    expect(told).toEqual([]);
    symbols.forEach((symbol, i) => {
      const meant = makeQuantity(3, symbol, namedDimension(name));
      if (isProblem(meant)) throw new Error(symbol);
      expect([symbol, lets[`v${i}`]?.si]).toEqual([symbol, meant.si]);
    });
  });
});

describe('units of two words', () => {
  it.each([
    ['9.2 lb/US gal', 9.2, 'lb/US gal'],
    ['1 US pt', 1, 'US pt'],
    ['4 US fl oz', 4, 'US fl oz'],
    ['150 oz av', 150, 'oz av'],
    ['40 GBP/UK gal', 40, 'GBP/UK gal'],
    ['9 oz/sq yd', 9, 'oz/yd2'],
    ['2 sq ft', 2, 'ft2'],
  ])('%s', async (typed, number, unit) => {
    const { told, lets } = await read(`recipe typed {\n  let v = ${typed}\n}`);
    expect(told).toEqual([]);
    expect(lets.v?.si).toBe(si(number, unit));
  });

  it('what may be two of them is asked, and each answer is read', async () => {
    const { told } = await read('recipe typed {\n  let v = 4 fl oz\n}');
    expect(told).toContain('unit/ambiguous-ounce: fl oz means more than one unit: write US fl oz or UK fl oz');
  });
});

describe('a slope is typed as the trade says it', () => {
  const angle = async (typed: string) => {
    const { told, recipe } = await read(`tool slab { flat 1200 mm by 800 mm }
recipe typed {
  part {
    outline rectangle 600 mm by 400 mm
    edge chamfer ${typed}
  }
  stack from tool slab {
    ply a biax_300 at 0 deg
    core c foam_pvc_80 10 mm, inset 40 mm, chamfer ${typed}
    ply b biax_300 at 0 deg
  }
}`);
    const core = recipe?.stack?.items.find((item) => 'name' in item && item.name === 'c');
    const edge = recipe?.part?.edge;
    return {
      told,
      core: (((core as Layer | undefined)?.chamfer?.si ?? Number.NaN) * 180) / Math.PI,
      edge: ((edge?.kind === 'chamfer' ? (edge.angle?.si ?? Number.NaN) : Number.NaN) * 180) / Math.PI,
    };
  };

  // arctangents, from any table
  it.each([
    ['3:1', 18.4349],
    ['1:3', 18.4349],
    ['1 in 3', 18.4349],
    ['20:1', 2.8624],
    ['1 in 20', 2.8624],
    ['20 deg', 20],
    ['1:1', 45],
  ])('%s', async (typed, degrees) => {
    const { told, core, edge } = await angle(typed);
    expect(told).toEqual([]);
    expect(core).toBeCloseTo(degrees, 3);
    expect(edge).toBeCloseTo(degrees, 3);
  });

  it.each(['0:3', '1:2:3'])('%s is none', async (typed) => {
    expect((await angle(typed)).told).toContain('line/not-understood: `chamfer` is not finished: chamfer 20 deg');
  });
});
