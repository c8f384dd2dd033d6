/** Words that nothing takes are told of where they stand, with the nearest one. */
import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { clauseWords } from '../../language/lower/layer-clauses.ts';
import { sayText } from '../../language/view/text.ts';
import { wordsAt } from '../../language/words/index.ts';
import type { Place } from '../../language/words/types.ts';
import { openBook } from '../harness/book.ts';

async function told(text: string): Promise<string[]> {
  const book = await openBook({ 'a.layup': text }, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const found = await analysis.findings(book.document('a.layup'));
  book.dispose();
  return found.filter(({ rule }) => rule.startsWith('line/')).map(({ rule, message }) => `${rule} ${sayText(message)}`);
}
const inShop = (line: string): string => `shop "a" {\n  ${line}\n}\n`;
const inRecipe = (line: string): string => `recipe r {\n${line}\n}\n`;

describe('words that nothing takes', () => {
  it.each([
    [
      inShop('habit leek 5 mbar in 10 min'),
      'line/not-understood no figure and no rule takes a habit called leek: is leak meant?',
    ],
    [inShop('habit zzzzzz 5 mm'), 'line/not-understood no figure and no rule takes a habit called zzzzzz'],
    [
      inRecipe('  part {\n    outline circle 400 mm\n    zone m circle 80 mm, clampd\n  }'),
      'line/not-understood `clampd` is no clause of zone: is clamped meant?',
    ],
    [
      inRecipe('  part {\n    outline circle 400 mm\n    cutout circle 80 mm, floof\n  }'),
      'line/not-understood `floof` is no clause of cutout',
    ],
    // the word is one of the part: what follows it is not
    [
      inRecipe('  part {\n    outline r\n  }'),
      'line/not-understood the line is not understood from `r` on; such a line reads outline rounded 1180 mm by 420 mm corner 140 mm',
    ],
    [
      inRecipe('  size small {\n    outline round 20 mm\n  }'),
      'line/not-understood the line is not understood from `round` on; such a line reads outline rounded 1180 mm by 420 mm corner 140 mm',
    ],
    [
      inRecipe('  part {\n    outline circle 400 mm\n    density 3\n  }'),
      'line/not-understood `density` is no word of a part',
    ],
  ])('%s', async (text, expected) => expect(await told(text)).toEqual([expected]));

  it.each(['stack', 'part', 'load rider', 'size short'])('a lone `%s` lacks its braces', async (head) => {
    const [first] = await told(inRecipe(`  ${head}`));
    expect(first).toContain(`line/missing-brace \`${head.split(' ')[0]}\` is a block and lacks its braces: `);
  });

  /** What is not read must not seem to be: `until full` would be a vacuum that is let off before the gel. */
  it.each([
    ['vacuum 30 mbar absolute until full', '`full` is no state to wait for: until gel or hard or cool'],
    ['wait until warm', '`warm` is no state to wait for: until tacky or gel or cool or hard'],
    [
      'drop test 5 mbar in 10 min',
      '`drop test` is no step of the notation: is leak test meant? do "..." puts any step on the sheet',
    ],
    ['vent v1 spiral_10 perimeter, 30 mm inside', '`inside` is no clause of a step'],
    ['peel nylon_85, 80 mm sideways edge', '`sideways` is no clause of a step'],
    ['release semi_permanent, 5 coats, sideways', '`sideways` is no clause of a step'],
    ['bag film_50, pleats 8 of 40 mm, double', '`double` is no clause of a step'],
  ])('in a step: %s', async (line, expected) => {
    expect(await told(inRecipe(`  process infusion {\n    ${line}\n  }`))).toEqual([`line/not-understood ${expected}`]);
  });

  /** What is read and leads to nothing must not seem to be done. */
  it.each([
    ['clean bench, pleats 4 of 40 mm', '`pleats` is not used on a line of `clean`'],
    ['lay stack, 40 mm past edge', '`past` is not used on a line of `lay`'],
    ['sand skin, batches 3', '`batches` is not used on a line of `sand`'],
    ['mix 1 kg, knife', '`knife` is not used on a line of `mix`'],
    ['peel nylon_85, 80 grit', '`grit` is not used on a line of `peel`'],
    ['tape sealant_12, 20 mm apart', '`apart` is not used on a line of `tape`'],
    ['trap, 20 min each', '`each` is not used on a line of `trap`'],
    ['bag film_50, use within 1 h', '`use` is not used on a line of `bag`'],
    ['wipe, at most 12 h', '`at` is not used on a line of `wipe`'],
    ['drill 8 holes 8 mm in bolts, until gel', '`until` is not used on a line of `drill`'],
    ['trim net, catalyst 1 % by weight', '`catalyst` is not used on a line of `trim`'],
    ['demould, part within 5 K', '`part` is not used on a line of `demould`'],
    [
      'clamp f1 when f2 is dancing',
      'this is nothing that a line is shut or opened at: when full, when f2 is running, or when front at (300 mm, 0 mm)',
    ],
    [
      'open f2 when lunch',
      'this is nothing that a line is shut or opened at: when full, when f2 is running, or when front at (300 mm, 0 mm)',
    ],
    ['check barcol', 'how much barcol is right? check barcol >= 35'],
    ['check shore_d', 'how much shore_d is right? check shore_d >= 78'],
  ])('in a step that it says nothing in: %s', async (line, expected) => {
    expect(await told(inRecipe(`  process infusion {\n    ${line}\n  }`))).toEqual([`line/not-understood ${expected}`]);
  });

  it.each([
    'clamp f1 when full',
    'clamp f1 when f2 is running',
    'open f2 when front at (300 mm, 0 mm)',
    'feed f1 spiral_10 from (0 mm, 0 mm) to (400 mm, 0 mm), 500 mm above pot',
    'do "Fold the film.", pleats 4 of 40 mm',
    'check "Warm enough", at middle',
    'dry skin, 2 h at 80 degC',
    'seal edge epoxy_laminating_slow, within 30 min of mix, people 2',
  ])('but not: %s', async (line) => {
    expect(await told(inRecipe(`  process infusion {\n    ${line}\n  }`))).toEqual([]);
  });

  it.each([
    [
      'core body foam_80 20 mm, clearance 1 mm',
      '`clearance` is of a groove, and this core has none: groove for keel, clearance 1 mm',
    ],
    [
      'core body foam_80 20 mm, depth 3 mm',
      '`depth` is of a groove, and this core has none: groove for keel, depth 1 mm',
    ],
    ['core body foam_80 20 mm, lap 50 mm', '`lap` is no clause of core'],
    ['insert pad glass_plate 12 mm, circle 60 mm, score 1 mm every 30 mm', '`score` is no clause of insert'],
    ['ply a biax_440 at 0 deg, once', '`once` is no clause of ply'],
  ])('in a layer: %s', async (line, expected) => {
    const [first, ...more] = await told(inRecipe(`  stack from tool bench {\n    ${line}\n  }`));
    expect(more).toEqual([]);
    expect(first).toContain(`line/not-understood ${expected}`);
  });

  it('what the reader of a layer takes is a word of the table', () => {
    for (const [kind, readers] of Object.entries(clauseWords)) {
      const words = new Set(wordsAt(`clause of ${kind}` as Place).map(({ word }) => word));
      // `2 coats` and `60 mm by 400 mm` begin with a number; the core of a part may say that it is net, as its skins do
      const also = [
        'amount',
        'net',
        ...(kind === 'strip' || kind === 'patch' ? ['lap', 'join', 'tab', 'darts', 'drop'] : []),
      ];
      expect(
        Object.keys(readers).filter((word) => !words.has(word) && !also.includes(word)),
        kind,
      ).toEqual([]);
    }
  });

  it('a lone word that names a layer, a zone or a line of the recipe is none of them', async () => {
    const text = inRecipe(`  part {
    outline circle 400 mm
    ends heel to nose
    zone corner_a circle 60 mm, centred at (0 mm, 0 mm)
  }
  stack from tool bench {
    insert a glass_plate 12 mm, circle 20 mm, centred at (0 mm, 90 mm)
    insert left glass_plate 12 mm, circle 60 mm, centred at (90 mm, 0 mm)
    insert right glass_plate 12 mm, circle 60 mm, centred at (-90 mm, 0 mm)
  }
  process bagged {
    drill 2 holes 6 mm in left, right, a
    sand left, corner_a, nose
    do "Roll out from the middle.", 10 min
  }`);
    expect(await told(text)).toEqual([]);
  });

  it('a recipe that has its layers of another one may speak of them', async () => {
    const base = inRecipe(
      '  part {\n    outline circle 400 mm\n  }\n  stack from tool bench {\n    ply a biax_440 at 0 deg, net\n  }',
    );
    const like =
      'recipe s like r {\n  process hand with epoxy_laminating_slow {\n    sand 80 grit, bottom_ply\n  }\n}\n';
    expect(await told(base + like)).toEqual([]);
  });
});
