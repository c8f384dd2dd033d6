/** The language server's own work as ratios to bare Langium parsing of the same text, in one process. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { DocumentState, EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { counters } from '../../calc/figure/index.ts';
import { entriesOf } from '../../language/analysis/entries.ts';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import { createLayupServices } from '../../language/book/services.ts';
import { addressOf, openBook, type TestBook } from '../harness/book.ts';
import { dist, root } from '../setup/paths.mjs';
import { bookOf, recipeText } from './book-of.ts';
import { type Bench, type Measure, shortest, taken, watch } from './measure.ts';

const rounds = 7;
const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
const least = (times: readonly number[]): number => Math.min(...times);

const fresh = (files: Readonly<Record<string, string>>) => {
  const { shared, layup } = createLayupServices<AnalysisServices>(EmptyFileSystem, analysisModule);
  const documents: LangiumDocument[] = Object.entries(files).map(([name, text]) =>
    shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(`file:///b/${name}`)),
  );
  for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
  return { shared, layup, documents };
};

/** Parse, link, lower and check a book of 100 recipes from nothing. */
async function wholeBook(): Promise<Measure[]> {
  const files = bookOf(100);
  const texts = Object.values(files);
  const { layup } = createLayupServices(EmptyFileSystem);
  const times = { parse: [] as number[], link: [] as number[], lower: [] as number[], check: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    // in the same round as what it is compared with: a machine that others load slows both
    times.parse.push(
      await taken(() => {
        for (const text of texts) layup.parser.LangiumParser.parse(text);
      }),
    );
    const { shared, layup: own, documents } = fresh(files);
    // the stock library is read once in the life of a server
    for (const entry of own.stock.all('material')) own.stock.document(entry.documentUri);
    times.link.push(await taken(() => shared.workspace.DocumentBuilder.build(documents, { validation: false })));
    times.lower.push(
      await taken(() => {
        for (const document of documents) entriesOf(document, 'workspace', undefined);
      }),
    );
    own.analysis.shelf();
    times.check.push(
      await taken(async () => {
        for (const document of documents) await own.analysis.findings(document);
      }),
    );
  }
  const parse = least(times.parse);
  return [
    { name: 'bare parse of 100 recipes and their materials', value: parse, unit: 'ms' },
    { name: 'index, scope and link / parse', value: least(times.link) / parse, unit: '', budget: 0.7 },
    { name: 'lower / parse', value: least(times.lower) / parse, unit: '', budget: 0.15 },
    { name: 'quick rules with light figures / parse', value: least(times.check) / parse, unit: '', budget: 1 },
  ];
}

/** One edit of one recipe among many, up to its findings. */
async function editOne(recipes: number, missing: boolean, name: string): Promise<Measure[]> {
  const book = await openBook<AnalysisServices>(bookOf(recipes, missing), {
    modules: [analysisModule],
    open: ['deck_0.layup'],
  });
  const { LangiumParser } = book.services.parser;
  const times: number[] = [];
  for (let round = 0; round < rounds + 3; round++) {
    const text = recipeText(0, missing).replace('revision 4', `revision ${5 + round}`);
    times.push(await taken(() => book.edit('deck_0.layup', text)));
  }
  const warm = times.slice(3);
  const parse = await shortest(() => LangiumParser.parse(recipeText(0)));
  book.dispose();
  return [
    {
      name: `edit one recipe of ${recipes}${name}, to findings / parse of it`,
      value: least(warm) / parse,
      unit: '',
      budget: 15,
    },
    {
      name: `edit one recipe of ${recipes}${name}, to findings, median`,
      value: median(warm),
      unit: 'ms',
      budget: missing ? 15 : 16,
    },
  ];
}

/** From a changed price to the findings of the file that is open. */
async function editMaterials(recipes: number): Promise<Measure[]> {
  const files = bookOf(recipes);
  const book: TestBook<AnalysisServices> = await openBook<AnalysisServices>(files, {
    modules: [analysisModule],
    open: ['deck_0.layup', 'materials.layup'],
  });
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const since = watch();
    let seen = 0;
    const listening = book.shared.workspace.DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
      if (document.uri.toString() === addressOf('deck_0.layup').toString() && seen === 0) seen = since();
    });
    await book.edit('materials.layup', (files['materials.layup'] ?? '').replace('price 4.00', `price 4.${10 + round}`));
    listening.dispose();
    times.push(seen === 0 ? since() : seen);
  }
  book.dispose();
  return [
    {
      name: `edit the materials of ${recipes} recipes, to findings of the open file`,
      value: median(times),
      unit: 'ms',
      budget: 50,
    },
  ];
}

async function editComment(): Promise<Measure[]> {
  const book = await openBook<AnalysisServices>(bookOf(10), { modules: [analysisModule], open: ['deck_0.layup'] });
  await book.edit('deck_0.layup', recipeText(0).replace('revision 4', 'revision 4 // now'));
  const before = counters.computed;
  await book.edit('deck_0.layup', recipeText(0).replace('revision 4', 'revision 4 // later'));
  const computed = counters.computed - before;
  book.dispose();
  return [{ name: 'edit of a comment: figures computed', value: computed, unit: '', budget: 0 }];
}

/** How long nothing else gets its turn while a file of 500 lines is edited, once the server is warm. */
async function heldUp(): Promise<Measure[]> {
  const text = Array.from({ length: 7 }, (_, i) => recipeText(i)).join('\n');
  const book = await openBook<AnalysisServices>(
    { 'materials.layup': bookOf(0)['materials.layup'] ?? '', 'long.layup': text },
    { modules: [analysisModule], open: ['long.layup'] },
  );
  let longest = 0;
  let since = watch();
  let running = true;
  const tick = (): void => {
    longest = Math.max(longest, since());
    since = watch();
    if (running) setImmediate(tick);
  };
  for (let round = 0; round < 30; round++) {
    // the first ten warm it up
    if (round === 10) {
      since = watch();
      tick();
    }
    await book.edit('long.layup', text.replace('revision 4', `revision ${5 + round}`));
  }
  running = false;
  book.dispose();
  return [
    {
      name: `longest hold of the event loop, file of ${text.split('\n').length} lines`,
      value: longest,
      unit: 'ms',
      budget: 50,
    },
  ];
}

/** A cold check in the terminal against a process that only parses the same files. */
async function cold(): Promise<Measure[]> {
  const cache = path.join(root, '.cache/bench');
  mkdirSync(cache, { recursive: true });
  const bare = path.join(cache, 'bare-parse.cjs');
  await build({
    entryPoints: [path.join(import.meta.dirname, 'bare-parse.ts')],
    outfile: bare,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    minify: true,
    logLevel: 'error',
    external: ['langium/test'],
  });
  const folder = mkdtempSync(path.join(tmpdir(), 'laybook-bench-'));
  try {
    for (const [name, text] of Object.entries(bookOf(100))) writeFileSync(path.join(folder, name), text);
    const run = (...args: string[]): void => {
      const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
      if (status === null || status > 1) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
    };
    const parse = await shortest(() => run(bare, folder));
    const check = await shortest(() => run(path.join(dist, 'laybook.cjs'), 'check', folder));
    // the same files flat in one folder: the bare process reads no folders
    const sample = path.join(root, 'extension/sample');
    const flat = mkdtempSync(path.join(folder, 'sample-'));
    for (const name of readdirSync(sample, { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.layup'),
    )) {
      copyFileSync(path.join(sample, name), path.join(flat, path.basename(name)));
    }
    const sampleParse = await shortest(() => run(bare, flat));
    const sampleCheck = await shortest(() => run(path.join(dist, 'laybook.cjs'), 'check', sample));
    return [
      { name: 'Node start and bare parse of 100 recipes, cold', value: parse, unit: 'ms' },
      { name: 'check of 100 recipes, cold / Node start and parse', value: check / parse, unit: '', budget: 2.5 },
      {
        name: 'check of the sample workshop, cold / Node start and parse',
        value: sampleCheck / sampleParse,
        unit: '',
        budget: 2.5,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const measure: Bench = async () => [
  ...(await wholeBook()),
  ...(await editOne(1000, false, '')),
  ...(await editOne(1000, true, ', each with a name that is missing')),
  ...(await editMaterials(1000)),
  ...(await editComment()),
  ...(await heldUp()),
  ...(await cold()),
];
