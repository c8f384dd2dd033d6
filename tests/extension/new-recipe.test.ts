/** A recipe written from a few answers has nothing to mend: checked in the standard workshop, as the terminal does. */
import { describe, expect, it } from 'vitest';
import {
  coresOf,
  coreThicknesses,
  fabricsOf,
  outlineKinds,
  processKinds,
  type RecipeAnswers,
  sizeLimits,
} from '../../extension/new/choices.ts';
import { newRecipe } from '../../extension/new/recipe.ts';
import { standardShop } from '../harness/standard-book.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

interface Found {
  readonly rule: string;
  readonly severity: string;
  readonly message: string;
  readonly file: string;
}

interface Searched {
  readonly shop?: string;
  readonly severities?: readonly string[];
}

/** What is found in recipes that lie in one workshop together: errors and warnings. */
async function faultsOf(
  recipes: readonly RecipeAnswers[],
  { shop = standardShop, severities = ['error', 'warning'] }: Searched = {},
): Promise<readonly string[]> {
  const written = Object.fromEntries(recipes.map((answers) => [`${answers.name}.layup`, newRecipe(answers)]));
  const { folder, dispose } = folderOf({ 'shop.layup': shop, ...written });
  try {
    const { out } = await laybook(folder, 'check', '.', '--format', 'json');
    const findings = JSON.parse(out).findings as readonly Found[];
    return findings
      .filter(({ severity }) => severities.includes(severity))
      .map(({ file, rule, message }) => `${file} ${rule}: ${message}`);
  } finally {
    dispose();
  }
}

const sizes = {
  rectangle: [0.72, 0.52],
  rounded: [1, 0.42],
  circle: [0.6, 0.6],
  ellipse: [0.8, 0.5],
  capsule: [0.9, 0.4],
} as const;

describe.each(processKinds)('a new recipe, %s', (process) => {
  const [fabric = ''] = fabricsOf[process];
  const [material = ''] = coresOf[process];

  it('has no error and no warning with any outline, with a core and without', async () => {
    const recipes = outlineKinds.flatMap((kind): RecipeAnswers[] => {
      const [length, width] = sizes[kind];
      const plain = { name: `plain_${kind}`, process, outline: { kind, length, width }, fabric };
      return [plain, { ...plain, name: `cored_${kind}`, core: { material, thickness: 0.01 } }];
    });
    expect(await faultsOf(recipes)).toEqual([]);
  }, 120_000);

  it('has none with any cloth and any core that is offered', async () => {
    const outline = { kind: 'rectangle', length: 0.72, width: 0.52 } as const;
    const recipes = fabricsOf[process].flatMap((cloth): RecipeAnswers[] =>
      coresOf[process].map((core) => ({
        name: `${cloth}_${core}`,
        process,
        outline,
        fabric: cloth,
        core: { material: core, thickness: 0.01 },
      })),
    );
    expect(await faultsOf(recipes)).toEqual([]);
  }, 120_000);

  // Without a shop the balance counts as one of whole grams: a warning about small batches is right.
  it('has no error where nothing is known of the shop', async () => {
    const outline = { kind: 'rounded', length: 0.72, width: 0.52 } as const;
    const alone = { name: 'alone', process, outline, fabric, core: { material, thickness: 0.01 } };
    expect(await faultsOf([alone], { shop: 'notation 1\n', severities: ['error'] })).toEqual([]);
  }, 120_000);

  // The balance may be too coarse for the resin of the smallest: a warning that is right.
  it('has no error at the smallest and the largest size, with the thinnest and the thickest core', async () => {
    const { least, most } = sizeLimits;
    const shapes = [
      [least, least],
      [most, least],
      [most, 1],
    ] as const;
    const recipes = shapes.flatMap(([length, width], index) =>
      [Math.min(...coreThicknesses), Math.max(...coreThicknesses)].map(
        (thickness, thick): RecipeAnswers => ({
          name: `part_${index}_${thick}`,
          process,
          outline: { kind: 'rectangle', length, width },
          fabric,
          core: { material, thickness },
        }),
      ),
    );
    expect(await faultsOf(recipes, { severities: ['error'] })).toEqual([]);
  }, 120_000);
});
