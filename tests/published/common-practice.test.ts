/**
 * Rules of thumb of the trade as sanity checks, each marked `common practice`: nobody publishes them with a derivation, but a
 * figure or a limit that leaves their range is a slip. They say nothing of the last per cent.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { SHEET_PAST } from '../../calc/bag/habits.ts';
import { wrapReach } from '../../calc/cloth/wrap.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { valueOf } from '../calc/outcomes.ts';
import { openBook } from '../harness/book.ts';
import { placeFragment } from '../harness/standard-book.ts';
import { laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const round = (radius: number) => ({ kind: 'round', radius }) as const;

describe('a wrapped skin is cut 25 to 40 mm larger all round (common practice)', () => {
  // cores of 12 to 20 mm, radii of 6 to 8 mm, landings of 20 to 25 mm, plies of half a millimetre
  it.each([
    [0.012, 0.006, 0.02],
    [0.015, 0.006, 0.02],
    [0.016, 0.008, 0.025],
    [0.02, 0.008, 0.025],
  ])('core of %s m, radius %s m, landing %s m', (height, radius, landing) => {
    const edge = { height, thickness: 0.0005, toolSide: round(radius), landingSide: round(radius) };
    const reach = valueOf(wrapReach(edge, landing));
    expect(reach).toBeGreaterThanOrEqual(0.025);
    expect(reach).toBeLessThanOrEqual(0.04);
  });

  it('in the sample workshop', async () => {
    const { out } = await laybook(root, 'report', 'sled_deck', 'extension/sample', '--format', 'json');
    const layers = JSON.parse(out).layers as readonly { wrap?: { needed: { value: number } } }[];
    const needed = layers.flatMap(({ wrap }) => wrap?.needed.value ?? []);
    expect(needed.length).toBe(1);
    for (const reach of needed) expect([reach > 0.025, reach < 0.04]).toEqual([true, true]);
  });
});

describe('a core is perforated about every 50 mm (common practice)', () => {
  const told = async (pitch: number): Promise<boolean> => {
    const placed = placeFragment(`    ply outer biax_440 at 0 deg, wrap onto body by 25 mm, darts auto
    core body foam_80 20 mm, perforate 2 mm every ${pitch} mm
    ply inner biax_440 at 0 deg, net`);
    const book = await openBook(placed.files, { modules: [analysisModule as never] });
    const { analysis } = book.services as typeof book.services & AnalysisServices;
    const found = await analysis.findings(book.document(placed.file));
    book.dispose();
    return found.some(({ rule }) => rule === 'core/coarse-perforation');
  };

  it('is well as it is; a third more is told of', async () => {
    expect(await told(40)).toBe(false);
    expect(await told(50)).toBe(false);
    expect(await told(67)).toBe(true);
  });

  it('in the sample workshop', () => {
    const text = readFileSync(path.join(root, 'extension/sample/sled_deck.layup'), 'utf8');
    const pitch = Number(/perforate \d+ mm every (\d+) mm/.exec(text)?.[1]);
    expect([pitch >= 30, pitch <= 50]).toEqual([true, true]);
  });
});

describe('flow mesh ends about 40 mm short of the edge (common practice)', () => {
  it('where the step does not say', () => {
    const past = SHEET_PAST.mesh?.value.si ?? Number.NaN;
    expect(Math.abs(-past - 0.04)).toBeLessThanOrEqual(0.01);
  });
});
