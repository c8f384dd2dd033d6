/** Curved tools from the text of a recipe to its figures: what is flat, what is hollow, what is crowned. */
import { afterEach, describe, expect, it } from 'vitest';
import { layerArea, layerPiece } from '../../calc/cloth/area.figure.ts';
import { coreCuts } from '../../calc/core/core.figure.ts';
import { coreBend } from '../../calc/curve/core-bend.figure.ts';
import { layerDrape } from '../../calc/curve/drape.figure.ts';
import { type FigureDefinition, isKnown } from '../../calc/figure/index.ts';
import { heightSoFar } from '../../calc/laminate/height.figure.ts';
import { layerDryMass } from '../../calc/laminate/mass.figure.ts';
import { layerThickness } from '../../calc/laminate/thickness.figure.ts';
import { contourArea, contourBox } from '../../calc/outline/contour-measure.ts';
import type { FlatPiece } from '../../calc/piece/flat-piece.ts';
import { flatPiecesOf } from '../../calc/piece/flat-pieces.figure.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { cutsLaidWords } from '../../language/view/piece-words.ts';
import { plainStyle } from '../../language/view/text.ts';
import { openBook, type TestBook } from '../harness/book.ts';

const recipe = (curve: string, more: { score?: string; part?: string; outer?: string } = {}) => `tool mould {
  flat 1600 mm by 900 mm
  ${curve}
  limit 90 degC
}
recipe lid {
  part {
    outline rounded 900 mm by 420 mm corner 140 mm
    ${more.part ?? 'edge square'}
    cutout circle 60 mm, centred at (200 mm, 0 mm)
  }
  stack from tool mould {
    ply outer triax_750 at 0 deg, ${more.outer ?? 'net'}
    core body foam_pvc_80 12 mm${more.score === undefined ? '' : `, ${more.score}`}
    ply inner triax_750 at 0 deg, net
  }
  process hand with epoxy_laminating_medium at 21 degC {
    lay stack
    cure 24 h at 21 degC
  }
}
`;

let book: TestBook<AnalysisServices> | undefined;
afterEach(() => book?.dispose());

async function laid(text: string) {
  book?.dispose();
  book = await openBook<AnalysisServices>({ 'lid.layup': text }, { modules: [analysisModule] });
  const { analysis } = book.services;
  const found = analysis.shelf().recipe('lid');
  if (found === undefined) throw new Error('no recipe');
  const bench = analysis.bench(found);
  return <T>(figure: FigureDefinition<T>, key = ''): T => {
    const answer = bench.ask(figure, key);
    if (!isKnown(answer)) throw new Error(`${figure.name}: ${JSON.stringify(answer)}`);
    return answer.value;
  };
}

type Asked = Awaited<ReturnType<typeof laid>>;
const middle = (ask: Asked, key: string) => ask(heightSoFar, key) - ask(layerThickness, key) / 2;
const boxOf = (ask: Asked, key: string) => {
  const [low, high] = contourBox(ask(flatPiecesOf, key)[0]?.cut ?? []);
  return { length: high.x - low.x, width: high.y - low.y };
};

describe('a tool that is curved one way', () => {
  it.each([
    ['curved across 0.5 m', -1],
    ['curved across 0.5 m hollow', -1],
    ['curved across 0.5 m crowned', 1],
  ])('%s: every layer is as wide as the arc at its middle', async (curve, sign) => {
    const flat = await laid(recipe(''));
    const flatOf = Object.fromEntries(
      ['outer', 'body', 'inner'].map((key) => [key, [flat(layerArea, key), flat(layerDryMass, key)] as const]),
    );
    const ask = await laid(recipe(curve));
    for (const key of ['outer', 'body', 'inner']) {
      const share = (0.5 + sign * middle(ask, key)) / 0.5;
      expect(boxOf(ask, key).length).toBeCloseTo(0.9, 6);
      expect(boxOf(ask, key).width).toBeCloseTo(0.42 * share, 5);
      const piece = ask(layerPiece, key);
      expect([piece.length, piece.width]).toEqual([expect.closeTo(0.9, 9), expect.closeTo(0.42 * share, 9)]);
      expect(ask(layerArea, key)).toBeCloseTo((flatOf[key]?.[0] ?? 0) * share, 6);
      expect(ask(layerDryMass, key)).toBeCloseTo((flatOf[key]?.[1] ?? 0) * share, 5);
    }
    // what is cut is what is paid for: the same area both ways, cutouts of the part are cut later
    const [cut] = ask(flatPiecesOf, 'outer');
    expect(contourArea(cut?.cut ?? [])).toBeCloseTo(ask(layerPiece, 'outer').area, 6);
    expect(ask(layerDrape, 'outer')).toBeUndefined();
  });

  it('is flat to the last digit where it is not curved, and next to flat where the radius is large', async () => {
    const flat = await laid(recipe(''));
    const before = ['outer', 'body', 'inner'].map((key) => ({
      key,
      area: flat(layerArea, key),
      width: boxOf(flat, key).width,
    }));
    expect(flat(coreBend, 'body')).toBeUndefined();
    const wide = await laid(recipe('curved along 90 m, across 90 m'));
    for (const { key, area, width } of before) {
      expect(wide(layerArea, key)).toBeCloseTo(area, 3);
      expect(boxOf(wide, key).width).toBeCloseTo(width, 3);
    }
    expect(wide(layerDrape, 'outer')).toMatchObject({ left: 0, darts: 0 });
  });

  it('says on the piece how many cuts a dome or a saddle asks for that are not drawn on it', async () => {
    const cutsOf = async (curve: string) => {
      const ask = await laid(recipe(curve));
      const [piece] = ask(flatPiecesOf, 'outer');
      return { drape: ask(layerDrape, 'outer'), piece };
    };
    const words = (piece: FlatPiece | undefined) => (piece === undefined ? [] : cutsLaidWords(piece, plainStyle));
    const dome = await cutsOf('curved along 0.5 m, across 0.5 m');
    expect(dome.drape?.darts).toBeGreaterThan(0);
    const { kind, count, width } = dome.piece?.cutsLaid ?? {};
    expect([kind, count]).toEqual(['dart', dome.drape?.darts]);
    // together the cuts take up all that the shear leaves
    expect((count ?? 0) * (width ?? 0)).toBeCloseTo(dome.drape?.left ?? 0, 9);
    expect(dome.piece?.darts).toEqual([]);
    expect(words(dome.piece).join()).toMatch(/^not drawn: up to \d+ darts of [\d.]+ mm, cut where it folds as laid$/);
    const saddle = await cutsOf('curved along 0.5 m, across 0.5 m crowned');
    expect(saddle.piece?.cutsLaid?.kind).toBe('slit');
    for (const none of ['', 'curved across 0.5 m', 'curved along 90 m, across 90 m'])
      expect((await cutsOf(none)).piece?.cutsLaid, none).toBeUndefined();
  });

  it('has the darts of a wrapped ply on its own outline, shear and folds apart', async () => {
    const ask = await laid(
      recipe('curved across 0.5 m crowned', { outer: 'wrap onto body by 25 mm, darts auto', part: 'edge round 4 mm' }),
    );
    const [cut] = ask(flatPiecesOf, 'outer');
    expect(cut?.darts.length).toBeGreaterThan(8);
    const piece = ask(layerPiece, 'outer');
    expect(boxOf(ask, 'outer').width).toBeCloseTo(piece.width, 4);
    expect((cut?.area ?? 0) + (cut?.darted ?? 0)).toBeCloseTo(piece.area, 5);
  });
});

it('is computed again where the curve changes, and not where the tool costs something else', async () => {
  const text = recipe('curved across 0.5 m');
  const ask = await laid(text);
  const before = ask(layerArea, 'inner');
  const again = async (changed: string) => {
    await book?.edit('lid.layup', changed);
    const { analysis } = book?.services ?? {};
    const found = analysis?.shelf().recipe('lid');
    if (analysis === undefined || found === undefined) throw new Error('no recipe');
    return analysis.bench(found).ask(layerArea, 'inner');
  };
  const first = await again(text);
  expect(await again(text.replace('limit 90 degC', 'limit 90 degC\n  cost 900 EUR over 150 parts'))).toBe(first);
  expect(await again(text.replace('curved across 0.5 m', 'curved across 0.4 m'))).not.toMatchObject({ value: before });
});

describe('a scored core', () => {
  // on the outside of the bend the cuts open: each m2 takes depth2 / (2 R) more
  it('takes more resin where its cuts open, and less where they close', async () => {
    const score = 'score 1 mm every 30 mm';
    const flat = await laid(recipe('', { score }));
    const area = flat(layerArea, 'body');
    const kerfs = flat(coreCuts, 'body').kerfs / area;
    expect(kerfs).toBeCloseTo((2 / 30 - 1 / 900) * 0.011, 9);
    const open = await laid(recipe('curved across 0.6 m', { score: `${score} from tool face` }));
    const bottom = open(heightSoFar, 'body') - 0.012 + 0.011;
    const gain = 0.011 ** 2 / (2 * (0.6 - bottom));
    expect(open(coreCuts, 'body').kerfs / open(layerArea, 'body')).toBeCloseTo(kerfs + gain, 9);
    // it is cut by the bottom of its cuts
    expect(boxOf(open, 'body').width).toBeCloseTo((0.42 * (0.6 - bottom)) / 0.6, 5);
    const closing = await laid(recipe('curved across 0.6 m', { score: `${score} from bag face` }));
    const top = closing(heightSoFar, 'body') - 0.011;
    expect(closing(coreCuts, 'body').kerfs / closing(layerArea, 'body')).toBeCloseTo(
      kerfs - 0.011 ** 2 / (2 * (0.6 - top)),
      9,
    );
    expect(closing(coreBend, 'body')?.ways[0]?.cuts).toMatchObject({ opens: false, closed: expect.closeTo(0.33, 9) });
  });

  it('has its cuts in the face that is not looked at', async () => {
    const seen = await laid(
      recipe('curved across 0.6 m', { score: 'score 1 mm every 30 mm', part: 'cosmetic tool face' }),
    );
    expect(seen(coreBend, 'body')?.ways[0]?.cuts?.opens).toBe(false);
    const crown = await laid(
      recipe('curved across 0.6 m crowned', { score: 'score 1 mm every 30 mm', part: 'cosmetic tool face' }),
    );
    expect(crown(coreBend, 'body')?.ways[0]?.cuts?.opens).toBe(true);
  });
});

describe('a tool that is curved both ways', () => {
  it('has too much cloth at the edge in a bowl, too little on a saddle', async () => {
    const bowl = (await laid(recipe('curved along 0.5 m, across 0.5 m')))(layerDrape, 'outer');
    const saddle = (await laid(recipe('curved along 0.5 m, across 0.5 m crowned')))(layerDrape, 'outer');
    expect(bowl?.excess).toBeGreaterThan(0.1);
    expect(saddle?.excess).toBeLessThan(-0.1);
    // in two pieces each has less of it
    const joined = await laid(
      recipe('curved along 0.5 m, across 0.5 m', { outer: 'net, join lap 30 mm at (0 mm, 0 mm)' }),
    );
    expect(joined(flatPiecesOf, 'outer').length).toBe(2);
    expect(joined(layerDrape, 'outer')?.excess).toBeLessThan(0.5 * (bowl?.excess ?? 0));
    // triaxial cloth shears little: some of it is left, in as many darts as it takes
    expect(bowl?.locks).toBeCloseTo((10 * Math.PI) / 180, 9);
    expect(bowl?.left).toBeCloseTo((bowl?.excess ?? 0) * (1 - (bowl?.locks ?? 0) / (bowl?.shear ?? 1)), 9);
    expect(bowl?.darts).toBe(Math.ceil((bowl?.left ?? 0) / 0.02));
  });
});
