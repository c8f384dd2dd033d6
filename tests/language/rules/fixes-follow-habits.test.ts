import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../../language/analysis/module.ts';
import { sayText } from '../../../language/view/text.ts';
import { openBook } from '../../harness/book.ts';

/*
 * What a fix writes has to please the shop that reads it: one that is stricter than the trade would be told of the mended line
 * at once again. Each recipe breaks a habit of this shop; every fix of the rule is tried.
 */
const shop = `notation 1
shop "Hollow Tarn Workshop" {
  currency EUR
  ambient 21 degC
  humidity 50 % RH
  pump 15 mbar absolute
  habit perforation 30 mm
  habit leak_most 0.3 mbar
  habit test 15 min
  habit brake 60 mm
  habit release_coats 5
  habit overlap 60 mm
  habit debulk 2
  habit demould 40 degC
  habit postcure 5 K/h
  habit gap 0.5 mm
}
tool bench_tool {
  flat 2000 mm by 1200 mm
  flange 120 mm
  limit 180 degC
}
`;

const stack = `    ply outer biax_600 at 0 deg, to trim
    core body foam_pvc_80 12 mm, inset 40 mm, chamfer 20 deg, perforate 2 mm every 30 mm
    insert pad birch_ply 12 mm, rectangle 80 mm by 60 mm, centred at (0 mm, 100 mm), chamfer 20 deg
    ply inner biax_600 at 0 deg, to trim`;
const infusion = `  process infusion with epoxy_infusion_slow at 23 degC {
    clean bench_tool
    release semi_permanent, 5 coats, 20 min each
    tape sealant_12
    lay rest
    peel nylon_85, 60 mm past edge
    mesh mesh_130, 60 mm short of edge
    feed f1 spiral_10 from (-300 mm, 0 mm) to (300 mm, 0 mm)
    vent v1 spiral_10 perimeter, 50 mm outside
    trap
    bag film_50, pleats 14 of 40 mm
    leak test 4 mbar in 15 min
    infuse {
      open f1
      clamp f1 when full
      vacuum 100 mbar absolute until gel
    }
    cure 24 h at 23 degC
    demould
    seal edge epoxy_laminating_medium
  }`;
const prepregs = `    ply a carbon_prepreg_200 at 0 deg, to trim
    repeat 4 { ply b carbon_prepreg_200 at 45 deg, to trim }`;
const oven = `  process prepreg {
    thaw carbon_prepreg_200, 6 h, bag shut
    clean bench_tool
    release semi_permanent, 5 coats, 20 min each
    tape sealant_12_hot
    lay rest, debulk 20 min every 2 plies
    peel nylon_85_untreated
    perforated film_p3
    breather glass_300
    bag film_75_hot, pleats 14 of 50 mm
    leak test 4 mbar in 15 min
    vacuum 900 mbar gauge
    cure {
      ramp 1.5 K/min to 120 degC
      hold 60 min, part above 117 degC
      cool 2 K/min to 35 degC
    }
    demould
  }`;
const bagged = `  process bagged with epoxy_laminating_medium at 20 degC {
    clean bench_tool
    release semi_permanent, 5 coats, 20 min each
    tape sealant_12
    lay rest
    peel nylon_85, 90 mm past edge
    perforated film_p3, 90 mm past edge
    breather poly_150, 85 mm past edge
    trap
    bag film_50, pleats 14 of 40 mm
    vacuum 650 mbar gauge
    cure 24 h at 20 degC
    demould
  }`;

const recipe = (layers: string, process: string): string => `notation 1
recipe cover {
  part {
    outline rectangle 1000 mm by 500 mm
    edge square
    trim allowance 25 mm
  }
  stack from tool bench_tool {
${layers}
  }
${process}
}
`;

const infused = (wrong: string, right: string): string => {
  expect(`${stack}\n${infusion}`).toContain(right);
  return recipe(stack.replace(right, wrong), infusion.replace(right, wrong));
};

const cases: readonly (readonly [rule: string, text: string])[] = [
  ['core/coarse-perforation', infused('every 35 mm', 'every 30 mm')],
  ['core/not-perforated', infused('chamfer 20 deg\n', 'chamfer 20 deg, perforate 2 mm every 30 mm\n')],
  ['core/race-track', infused('(0 mm, 100 mm), clearance 3 mm, chamfer 20 deg', '(0 mm, 100 mm), chamfer 20 deg')],
  ['mesh/reaches-edge', infused('50 mm short of edge', '60 mm short of edge')],
  ['mesh/missing', infused('', '    mesh mesh_130, 60 mm short of edge\n')],
  ['release/missing', infused('', '    release semi_permanent, 5 coats, 20 min each\n')],
  ['vacuum/no-leak-test', infused('', '    leak test 4 mbar in 15 min\n')],
  [
    'vacuum/no-second-test',
    infused('leak test 4 mbar in 15 min\n    heat bench_tool to 30 degC, 30 min\n', 'leak test 4 mbar in 15 min\n'),
  ],
  [
    'join/overlap-short',
    infused('outer biax_600 at 0 deg, to trim, join lap 15 mm at (0 mm, 0 mm)', 'outer biax_600 at 0 deg, to trim'),
  ],
  [
    'ply/join-in-high-load',
    infused('outer biax_600 at 0 deg, to trim, join butt at (0 mm, 0 mm)', 'outer biax_600 at 0 deg, to trim'),
  ],
  [
    'cure/postcure-ramp',
    infused('demould\n    postcure flat {\n      ramp 20 K/h to 60 degC\n      hold 10 h\n    }\n', 'demould\n'),
  ],
  [
    'breather/no-path',
    recipe('    ply a carbon_twill_200 at 0 deg, net\n    ply b carbon_twill_200 at 45 deg, net', bagged),
  ],
  ['prepreg/no-debulk', recipe(prepregs, oven.replace(', debulk 20 min every 2 plies', ''))],
  ['prepreg/no-debulk', recipe(prepregs, oven.replace('every 2 plies', 'every 3 plies'))],
  ['cure/demould-hot', recipe(prepregs, oven.replace('to 35 degC', 'to 70 degC'))],
];

async function findingsOf(text: string) {
  const files = { 'shop.layup': shop, 'cover.layup': text };
  const book = await openBook(files, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const found = await analysis.findings(book.document('cover.layup'));
  book.dispose();
  return found.map(({ rule, message, fixes }) => ({ rule, fixes, said: `${rule} ${sayText(message)}` }));
}

describe('fixes of a shop that is stricter than the trade', () => {
  for (const [i, [rule, text]] of cases.entries())
    it(`${rule} (${i + 1})`, async () => {
      const before = await findingsOf(text);
      const own = before.filter((each) => each.rule === rule);
      expect(own.length, before.map(({ said }) => said).join('\n')).toBe(1);
      const fixes = own.flatMap((each) => each.fixes);
      expect(fixes.length).toBeGreaterThan(0);
      for (const { title, edits } of fixes) {
        const mended = [...edits]
          .sort((a, b) => b.offset - a.offset)
          .reduce((all, edit) => all.slice(0, edit.offset) + edit.text + all.slice(edit.end), text);
        const left = (await findingsOf(mended)).map(({ said }) => said);
        const others = before.filter((each) => each.rule !== rule).map(({ said }) => said);
        expect(left, `after "${sayText(title)}"`).toEqual(others);
      }
    });
});
