/** Paper: from a key to the sheet that the page is sent, a PDF, and the records of a busy shop. */
import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { createLayupServices } from '../../language/book/services.ts';
import { sheetPdf } from '../../language/export/pdf/index.ts';
import { type PaperParams, type PaperResult, paperRequest } from '../../language/protocol/paper.ts';
import { cautionsOf } from '../../language/view/cautions.ts';
import { sheetOf } from '../../language/view/sheet/index.ts';
import { startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import type { Bench, Measure } from './measure.ts';

const rounds = 11;
const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;

/** A tray of 20 layers that is laid by hand. */
const thickRecipe = (past: number): string => `notation 1

recipe tray {
  revision 1
  part {
    outline rounded 900 mm by 600 mm corner 60 mm
    edge round 8 mm
  }
  stack from tool sled_tool {
${Array.from({ length: 19 }, (_, i) => `    ply p${i} triax_680 at ${(i % 4) * 45} deg`).join('\n')}
    core body foam_80 20 mm
  }
  process infusion with epoxy_slow at 23 degC {
    clean sled_tool
    tape sealant_12
    lay stack
    peel nylon_85, ${past} mm past edge
    mesh mesh_130, 40 mm short of edge
    trap
    bag film_50
    leak test 5 mbar in 10 min
    infuse
    cure 24 h at 23 degC
    demould
    trim flash
    weigh
  }
}
`;

/** Median of the time from the change of the text to the page. */
async function preview(): Promise<Measure[]> {
  const server = await startMemoryServer({ ...sampleFiles, 'tray.layup': thickRecipe(80) });
  try {
    await server.open('tray.layup', thickRecipe(80));
    await server.settled();
    const params: PaperParams = {
      uri: server.uriOf('tray.layup'),
      kind: 'sheet',
      recipe: 'tray',
      paper: 'a4',
      form: 'body',
    };
    const times: number[] = [];
    for (let round = 0; round < rounds; round++) {
      const started = performance.now();
      await server.change('tray.layup', { text: thickRecipe(81 + round) });
      const { body } = await server.client.sendRequest<PaperResult>(paperRequest, params);
      times.push(performance.now() - started);
      if (!body?.includes(`${81 + round} mm past`)) throw new Error('an old page');
      await server.settled();
    }
    return [
      {
        name: 'build sheet of 20 layers, from a key to its page',
        value: median(times.slice(1)),
        unit: 'ms',
        budget: 200,
      },
    ];
  } finally {
    server.stop();
  }
}

const fresh = (files: Readonly<Record<string, string>>) => {
  const { shared, layup } = createLayupServices<AnalysisServices>(EmptyFileSystem, analysisModule);
  const documents: LangiumDocument[] = Object.entries(files).map(([name, text]) =>
    shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(`file:///b/${name}`)),
  );
  for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
  return { shared, layup, documents };
};

/** A PDF in a process that has the library loaded: the second one. */
async function pdf(): Promise<Measure[]> {
  const { shared, layup, documents } = fresh(sampleFiles);
  await shared.workspace.DocumentBuilder.build(documents, { validation: false });
  const shelf = layup.analysis.shelf();
  const recipe = shelf.recipe('hatch_board');
  if (recipe === undefined) throw new Error('the sample workshop has no hatch_board');
  const telling = {
    style: { units: 'si' },
    recipe: recipe.entry,
    cautions: cautionsOf(recipe, shelf),
    place: () => '',
  } as const;
  const times: number[] = [];
  let pages = 0;
  for (let round = 0; round < 6; round++) {
    const started = performance.now();
    const made = await sheetPdf(sheetOf(recipe, shelf, telling, { number: String(round) }, ''), { paper: 'a4' });
    times.push(performance.now() - started);
    pages = made.pages;
  }
  const each = (median(times.slice(1)) * 6) / pages;
  return [{ name: `build sheet as a PDF, 6 pages (measured on ${pages})`, value: each, unit: 'ms', budget: 1000 }];
}

const recordOf = (i: number): string => `notation 1

record sled_deck ${2015 + Math.floor(i / 100)}-${String(1 + (i % 12)).padStart(2, '0')}-${String(1 + (i % 28)).padStart(2, '0')} "no. ${100 + i}" {
  revision 4
  by "RT"
  lot triax_680 "G-${Math.floor(i / 40)}"
  lot epoxy_slow "A-${Math.floor(i / 25)}" expires ${2017 + Math.floor(i / 100)}-06-30
  ambient ${18 + (i % 6)} degC, 60 % RH
  step lay ${30 + (i % 9)} min
  vacuum 22 mbar absolute, dry
  leak ${2 + (i % 3)} mbar in 10 min
  batch 1.7 kg at ${18 + (i % 6)} degC
  fill ${5 + (i % 2)} min
  mass ${(2.1 + (i % 11) / 100).toFixed(2)} kg
}
`;

/** 1,000 records, each a file: read and checked from nothing, and one more. */
async function records(): Promise<Measure[]> {
  const count = 1000;
  const files: Record<string, string> = { ...sampleFiles };
  for (let i = 0; i < count; i++) files[`records/sled_deck/${i}.layup`] = recordOf(i);
  const { shared, layup, documents } = fresh(files);
  for (const entry of layup.stock.all('material')) layup.stock.document(entry.documentUri);
  const check = async (each: readonly LangiumDocument[]): Promise<number> => {
    let found = 0;
    for (const document of each) found += (await layup.analysis.findings(document)).length;
    return found;
  };
  let started = performance.now();
  await shared.workspace.DocumentBuilder.build(documents, { validation: false });
  await check(documents.filter(({ uri }) => uri.path.includes('/records/')));
  const cold = performance.now() - started;
  const times: number[] = [];
  for (let round = 0; round < 7; round++) {
    started = performance.now();
    const more = shared.workspace.LangiumDocumentFactory.fromString(
      recordOf(count + round),
      URI.parse(`file:///b/records/sled_deck/more-${round}.layup`),
    );
    shared.workspace.LangiumDocuments.addDocument(more);
    await shared.workspace.DocumentBuilder.build([more], { validation: false });
    await check([more]);
    times.push(performance.now() - started);
  }
  return [
    { name: '1,000 records read and checked from nothing', value: cold, unit: 'ms', budget: 2000 },
    { name: 'one more record among 1,000', value: median(times), unit: 'ms', budget: 50 },
  ];
}

export const measure: Bench = async () => [...(await preview()), ...(await pdf()), ...(await records())];
