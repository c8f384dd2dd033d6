/** Every piece of every recipe of the sample workshop, read back from its files: nothing is lost on the way to the cutter. */
import { describe, expect, it } from 'vitest';
import { isKnown } from '../../../calc/figure/index.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import { flatPieces } from '../../../calc/piece/flat-pieces.figure.ts';
import { type AnalysisServices, analysisModule } from '../../../language/analysis/module.ts';
import { cutFilesOf } from '../../../language/export/cut/of-recipe.ts';
import { openBook } from '../../harness/book.ts';
import { sampleFiles } from '../../harness/sample.ts';
import { areaOfPath, areaOfPolyline, readDxf, readSvg } from './read-back.ts';

const { services } = await openBook<AnalysisServices>(sampleFiles, { modules: [analysisModule] });
const shelf = services.analysis.shelf();

interface Cut {
  readonly title: string;
  readonly pieces: readonly FlatPiece[];
  readonly bench: ReturnType<typeof services.analysis.bench>;
}

const cuts = [...shelf.names('recipe')].sort().flatMap((name): Cut[] => {
  const whole = shelf.recipe(name);
  return [undefined, ...(whole?.sizes ?? [])].flatMap((size) => {
    const recipe = shelf.recipe(name, size);
    if (recipe === undefined) return [];
    const bench = services.analysis.bench(recipe);
    const pieces = bench.ask(flatPieces);
    if (!isKnown(pieces) || pieces.value.length === 0) return [];
    return [{ title: size === undefined ? name : `${name} ${size}`, pieces: pieces.value, bench }];
  });
});

const order = { by: 'piece', quantity: 1, paper: 'a4' } as const;
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** Share by which an area read back (mm2) is beside that of the piece (m2). */
const beside = (read: number, { area }: FlatPiece): number => Math.abs(read / (area * 1e6) - 1);

describe('the sample workshop, cut', () => {
  it('has recipes with pieces', () => {
    expect(cuts.length).toBeGreaterThan(4);
  });

  it.each(cuts)('$title: areas in SVG and DXF are those of the pieces to a millionth', async ({ pieces, bench }) => {
    const svg = await cutFilesOf(bench, { ...order, format: 'svg' }, { style: { units: 'si' } });
    const dxf = await cutFilesOf(bench, { ...order, format: 'dxf' }, { style: { units: 'si' } });
    expect(svg.files).toHaveLength(pieces.length);
    for (const [i, piece] of pieces.entries()) {
      const [edge = 0, ...holes] = readSvg(text(svg.files[i]?.bytes ?? new Uint8Array()))
        .filter(({ within, name }) => within.includes('cut') && name === 'path')
        .map(({ attributes }) => areaOfPath(attributes.d ?? ''));
      expect(
        beside(
          holes.reduce((rest, hole) => rest - hole, edge),
          piece,
        ),
        `${piece.name}, SVG`,
      ).toBeLessThan(1e-6);
      const lines = readDxf(text(dxf.files[i]?.bytes ?? new Uint8Array()))
        .entities.filter(({ layer, type }) => layer === 'CUT' && type === 'POLYLINE')
        .map(({ vertices = [] }) => areaOfPolyline(vertices));
      expect(
        beside(
          lines.reduce((sum, each) => sum + each, 0),
          piece,
        ),
        `${piece.name}, DXF`,
      ).toBeLessThan(1e-6);
    }
  });

  it.each(cuts)(
    '$title: a piece that lies alone keeps its count and its material on the roll',
    async ({ pieces, bench }) => {
      const { files } = await cutFilesOf(
        bench,
        { ...order, by: 'material', format: 'dxf', quantity: 2 },
        { style: { units: 'si' } },
      );
      const materials = new Set(pieces.map(({ material }) => material));
      expect(files).toHaveLength(materials.size);
      const edges = files.flatMap(({ bytes }) =>
        readDxf(text(bytes))
          .entities.filter(({ layer, type }) => layer === 'CUT' && type === 'POLYLINE')
          .map(({ vertices = [] }) => areaOfPolyline(vertices)),
      );
      const area = pieces.reduce((sum, { area: one, count }) => sum + 2 * count * one * 1e6, 0);
      expect(Math.abs(edges.reduce((sum, each) => sum + each, 0) / area - 1)).toBeLessThan(1e-6);
    },
  );
});
