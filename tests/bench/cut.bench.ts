/** Cutting 50 plies: from the pieces of a recipe to files on the disk. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { flatPieces } from '../../calc/piece/flat-pieces.figure.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { cutFilesOf } from '../../language/export/cut/of-recipe.ts';
import { tiledPdf } from '../../language/export/pdf/index.ts';
import type { CutFormat } from '../../language/protocol/cut-files.ts';
import { writeFiles } from '../../language/terminal/write-files.ts';
import { openBook } from '../harness/book.ts';
import { type Bench, type Measure, shortest } from './measure.ts';

const plies = Array.from(
  { length: 50 },
  (_, i) => `    ply p${i} cloth at ${i % 2 === 0 ? 0 : 45} deg, wrap onto body by 25 mm, darts auto`,
);

const book = `recipe deck "Deck" {
  part {
    outline rounded 1180 mm by 420 mm corner 140 mm
    edge round 8 mm
  }
  stack from tool board {
${plies.join('\n')}
    core body foam 20 mm
  }
}
fabric cloth {
  fibre e_glass
  layers stitched 45 deg 220 g/m2, -45 deg 220 g/m2
  fraction 50 % by volume infused
  roll 1270 mm by 50 m
}
core foam {
  density 80 kg/m3
  sheet 1220 mm by 2440 mm
}
tool board {
  flat 1600 mm by 700 mm
  flange 110 mm
}
`;

export const measure: Bench = async (): Promise<Measure[]> => {
  const { services } = await openBook<AnalysisServices>({ 'deck.layup': book }, { modules: [analysisModule] });
  const { analysis } = services;
  const recipe = analysis.shelf().recipe('deck');
  if (recipe === undefined) throw new Error('the recipe to cut is not there');
  const bench = analysis.bench(recipe);
  const started = performance.now();
  bench.ask(flatPieces);
  const pieces = performance.now() - started;
  const folder = mkdtempSync(path.join(tmpdir(), 'laybook-cut-'));
  const write = async (format: CutFormat): Promise<void> => {
    const order = { format, by: 'piece', quantity: 1, paper: 'a4' } as const;
    const { files } = await cutFilesOf(bench, order, { style: { units: 'si' }, tiledPdf });
    if (files.length < 51) throw new Error(`${files.length} files are too few`);
    await writeFiles(folder, files, { from: folder, force: true });
  };
  try {
    return [
      { name: 'flat pieces of 50 wrapped plies, cold', value: pieces, unit: 'ms' },
      {
        name: 'pieces of 50 plies written as SVG',
        value: await shortest(() => write('svg')),
        unit: 'ms',
        budget: 1000,
      },
      {
        name: 'pieces of 50 plies written as DXF',
        value: await shortest(() => write('dxf')),
        unit: 'ms',
        budget: 1000,
      },
      {
        name: 'pieces of 50 plies written as PDF',
        value: await shortest(() => write('pdf')),
        unit: 'ms',
        budget: 1000,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
};
