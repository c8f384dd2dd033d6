import { afterEach, describe, expect, it } from 'vitest';
import type { Recipe } from '../../calc/model/index.ts';
import { formatQuantity, type Quantity } from '../../calc/quantity/index.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { sayText } from '../../language/view/text.ts';
import { openBook, type TestBook } from '../harness/book.ts';
import { standardShop, standardTools } from '../harness/standard-book.ts';

/** What a recipe means: `let`, likeness, sizes, copies, and what is kept for later. */
let book: TestBook<AnalysisServices>;
afterEach(() => book.dispose());

async function read(files: Readonly<Record<string, string>> | string) {
  const all = typeof files === 'string' ? { 'a.layup': files } : files;
  book = await openBook<AnalysisServices>(
    { 'shop.layup': standardShop, 'tools.layup': standardTools, ...all },
    { modules: [analysisModule] },
  );
  const { analysis } = book.services;
  const told: string[] = [];
  for (const name of Object.keys(all)) {
    for (const finding of await analysis.findings(book.document(name)))
      told.push(`${finding.severity} ${finding.rule}: ${sayText(finding.message)}`);
  }
  return {
    told,
    recipe: (name: string, size?: string): Recipe => found(analysis.shelf().recipe(name, size)),
    shelf: analysis.shelf(),
  };
}

function found(recipe: Recipe | undefined): Recipe {
  if (recipe === undefined) throw new Error('no such recipe');
  return recipe;
}

const shown = (value: unknown): string =>
  typeof value === 'object' ? formatQuantity(value as Quantity) : String(value);
const lets = (recipe: Recipe): Record<string, string> =>
  Object.fromEntries(Object.entries(recipe.lets).map(([name, value]) => [name, shown(value)]));
const only = (told: readonly string[], group: RegExp): string[] => told.filter((line) => group.test(line));

describe('let', () => {
  it('reckons with dimensions, in any order, and keeps what is known to be unknown', async () => {
    const { recipe, told } = await read(`recipe a {
  let room = (rim + 2 * 10 mm) / 2
  let rim = 40 mm
  let area = rim * 1 m
  let later = ?
  let sum = later + rim
}`);
    expect(lets(recipe('a'))).toEqual({
      room: '30 mm',
      rim: '40 mm',
      area: '0.04 m2',
      later: 'unknown',
      sum: 'unknown',
    });
    expect(only(told, /unit\/|name\/cyclic/)).toEqual([]);
  });

  it('says where dimensions do not go together, and what it does not know', async () => {
    const { told, recipe } = await read(
      'recipe a {\n  let wrong = 40 mm + 3 kg\n  let half = nothing / 2\n  let none = 5 mm / 0\n}',
    );
    expect(lets(recipe('a'))).toEqual({});
    expect(only(told, /unit\/wrong-dimension/)).toEqual([
      'error unit/wrong-dimension: a mass cannot be added to a length',
    ]);
    expect(only(told, /name\/unknown/).join()).toContain('there is no `let nothing`');
    expect(only(told, /unit\/suspicious/)).toEqual(['error unit/suspicious: this divides by zero']);
  });

  it('reports a cycle once for each of its lines, and goes on', async () => {
    const { told, recipe } = await read(
      'recipe a {\n  let a = b + 1 mm\n  let b = c + 1 mm\n  let c = a + 1 mm\n  let d = d\n  let fine = 3 mm\n}',
    );
    expect(lets(recipe('a'))).toEqual({ fine: '3 mm' });
    expect(only(told, /name\/cyclic/).length).toBeGreaterThanOrEqual(2);
  });
});

const parent = `recipe parent {
  revision 3
  quantity 5
  let landing = 25 mm
  part {
    outline rounded 1180 mm by 420 mm corner 140 mm
    edge round 8 mm
    ends heel to nose
  }
  stack from tool bench_tool {
    ply outer biax_440 at 0 deg, wrap onto body by landing, darts auto
    core body foam_80 20 mm, perforate 2 mm every 40 mm
    patch pad biax_440 at 45 deg, circle 100 mm
    ply inner biax_440 at 0 deg, net
  }
  expect mass <= 3 kg
  size short {
    quantity 4
    outline rounded 980 mm by 400 mm corner 130 mm
    let landing = 20 mm
    change outer, darts 16
    without pad
  }
}
`;
const names = (recipe: Recipe): string[] =>
  (recipe.stack?.items ?? []).map((item) => ('name' in item ? item.name : item.kind));

describe('a size', () => {
  it('replaces let, outline and quantity, changes clauses by their word and leaves a line out', async () => {
    const { recipe } = await read(parent);
    const base = recipe('parent');
    const short = recipe('parent', 'short');
    expect([base.quantity, short.quantity]).toEqual([5, 4]);
    expect([base.part?.outline, short.part?.outline]).toMatchObject([{ length: 1.18 }, { length: 0.98, corner: 0.13 }]);
    expect(names(base)).toEqual(['outer', 'body', 'pad', 'inner']);
    expect(names(short)).toEqual(['outer', 'body', 'inner']);
    const [outer] = short.stack?.items ?? [];
    expect(outer).toMatchObject({ darts: 16, extent: { kind: 'wrap', target: 'body', landing: { si: 0.02 } } });
    expect(base.stack?.items[0]).toMatchObject({ darts: 'auto', extent: { landing: { si: 0.025 } } });
    expect(base.sizes).toEqual(['short']);
  });
});

describe('likeness', () => {
  it('takes over another recipe over files; own lines win, change and without serve here too', async () => {
    const { recipe } = await read({
      'parent.layup': parent,
      'child.layup':
        'recipe child like parent {\n  quantity 2\n  let landing = 30 mm\n  change outer, tab 60 mm at heel\n  without pad\n  expect cost <= 400 EUR\n}\n',
    });
    const child = recipe('child');
    expect(child.revision).toBe(3);
    expect(child.quantity).toBe(2);
    expect(names(child)).toEqual(['outer', 'body', 'inner']);
    expect(child.stack?.items[0]).toMatchObject({
      darts: 'auto',
      tabs: [{ end: 'heel' }],
      extent: { landing: { si: 0.03 } },
    });
    expect(child.expects.map((each) => each.test.what)).toEqual(['mass', 'cost']);
  });

  it('of a process: a changed line replaces the step of the same verb and name', async () => {
    const { recipe } = await read({
      'house.layup':
        'recipe house {\n  process infusion with epoxy_slow at 23 degC {\n    tape sealant_12\n    feed f1 spiral_10 from (0 mm, 0 mm) to (100 mm, 0 mm)\n    bag film_50, pleats 4 of 40 mm\n    trap\n  }\n}\n',
      'own.layup':
        'recipe own {\n  process infusion like house {\n    bag film_50, pleats 14 of 60 mm\n    weigh\n  }\n}\n',
    });
    const { process } = recipe('own');
    expect(process?.resin).toBe('epoxy_slow');
    expect(process?.steps.map((step) => step.verb)).toEqual(['tape', 'feed', 'bag', 'trap', 'weigh']);
    expect(process?.steps[2]?.clauses[0]?.arguments[0]).toMatchObject({ amount: { si: 14 } });
  });

  it('of a process: what is changed and left out, of several alike the first, and the process that this one is like', async () => {
    const { recipe, told } = await read({
      'first.layup':
        'recipe first {\n  process infusion with epoxy_slow at 23 degC {\n    lay a\n    lay b\n    check "One."\n    check "Two."\n    degas 10 min\n    bag film_50, pleats 4 of 40 mm\n    cure 24 h at 23 degC\n    cure 8 h at 50 degC\n  }\n}\n',
      'second.layup':
        'recipe second {\n  process infusion like first {\n    without degas\n    change bag, pleats 14 of 60 mm\n    weigh\n  }\n}\n',
      'third.layup':
        'recipe third {\n  process infusion like second {\n    lay b, people 2\n    cure 30 h at 23 degC\n    check "Two."\n  }\n}\n',
      'ring.layup': 'recipe one {\n  process hand like two\n}\nrecipe two {\n  process hand like one\n}\n',
    });
    expect(told).toBeDefined();
    const second = recipe('second').process?.steps ?? [];
    expect(second.map(({ verb }) => verb)).toEqual('lay lay check check bag cure cure weigh'.split(' '));
    expect(second[4]?.clauses[0]?.arguments[0]).toMatchObject({ amount: { si: 14 } });
    const third = recipe('third').process;
    expect(third?.resin).toBe('epoxy_slow');
    expect(third?.steps.map(({ verb }) => verb)).toEqual(second.map(({ verb }) => verb));
    expect(third?.steps.map(({ clauses }) => clauses.map(({ word }) => word).join())).toMatchObject([
      '',
      'people',
      '',
      '',
      'pleats',
      '',
      '',
      '',
    ]);
    expect(third?.steps[5]?.arguments[0]).toMatchObject({ amount: { si: 30 * 3600 } });
    expect(third?.steps[6]?.arguments[0]).toMatchObject({ amount: { si: 8 * 3600 } });
  });

  it('in a circle is told, and every recipe is still read', async () => {
    const { told, recipe } = await read('recipe a like b {\n  quantity 2\n}\nrecipe b like a {\n  quantity 3\n}\n');
    expect(only(told, /name\/cyclic/).length).toBeGreaterThan(0);
    expect([recipe('a').quantity, recipe('b').quantity]).toEqual([2, 3]);
  });

  it('of a material changes one value and takes all else from stock', async () => {
    const { shelf } = await read('fabric biax_440 like stock {\n  price 5.10 EUR/m2\n}\n');
    const material = shelf.material('biax_440');
    expect(material?.origin).toBe('workspace');
    expect(material?.cloth?.at.entry).toBe('stock/material/biax_440');
    expect(material?.prices).toMatchObject([{ value: { amount: { si: 5.1 } }, at: { entry: 'material/biax_440' } }]);
  });
});

describe('what computes later', () => {
  it('is kept in the model and said as information: loads, curved tools', async () => {
    const { told, recipe, shelf } = await read(`tool bow {
  flat 900 mm by 700 mm
  curved along 2.4 m
  flange 110 mm
}
recipe a {
  part {
    outline file "outlines/lid.svg" layer cut
  }
  load rider {
    supports 760 mm apart
    weight 95 kg over 120 mm at middle
    factor 3
  }
  expect sag under rider <= 12 mm
  expect margin under rider >= 0
  expect fill <= 60 % of gel
}
recipe b {
  part {
    outline path "M 0 0 L 100 0 L 100 50 Z"
  }
}`);
    const a = recipe('a');
    expect(a.part?.outline).toEqual({
      kind: 'file',
      file: 'outlines/lid.svg',
      address: 'file:///book/outlines/lid.svg',
      layer: 'cut',
    });
    expect(a.loads).toMatchObject([{ name: 'rider', factor: 3, loads: [{ kind: 'weight', place: 'middle' }] }]);
    expect(shelf.tool('bow')?.curved?.value).toMatchObject({ along: { si: 2.4 } });
    const later = told.filter((line) => line.includes('not computed yet'));
    expect(later.length).toBeGreaterThanOrEqual(3);
    expect(later.every((line) => line.startsWith('info '))).toBe(true);
    expect(only(told, /^error (?!name|stack|outline\/file-missing)/)).toEqual([]);
    expect(only(told, /outline\/file-missing/).length).toBe(1);
  });

  it('a file never lies outside of the workspace folder', async () => {
    for (const file of ['../secret.svg', '/etc/passwd.svg', 'C:\\\\a.dxf', 'a/../../b.svg', '%2e%2e/b.svg']) {
      const { told } = await read(`recipe a {\n  part {\n    outline file "${file}"\n  }\n}`);
      expect(only(told, /outline\/file-missing/).length, file).toBe(1);
      book.dispose();
    }
  });
});

describe('copies', () => {
  it('of a repeat bear numbers, and are laid by them', async () => {
    const { told, recipe } = await read(`recipe a {
  stack from tool bench_tool {
    repeat 3, stagger 60 mm, turn 90 deg {
      ply mat biax_440 at 0 deg, lap 50 mm
    }
  }
  process hand with epoxy_laminating_medium at 20 degC {
    release wax, 4 coats, 20 min each
    lay mat.1 to mat.2
    lay mat.3
    cure 24 h at 20 degC
    demould
  }
}`);
    expect(recipe('a').stack?.items[0]).toMatchObject({ kind: 'repeat', times: 3, turn: { si: Math.PI / 2 } });
    expect(only(told, /ply\/(laid-twice|never-laid)|name\/unknown/)).toEqual([]);
  });
});
