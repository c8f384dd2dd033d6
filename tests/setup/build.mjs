// Bundles the programs into dist/: the extension's client and the language server, each for Node and for a browser, the
// script of its page, and the terminal command.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { build as bundle, transform } from 'esbuild';
import { plugins, textsBeside } from './bundle-plugins.mjs';
import { filesBelow } from './files.mjs';
import { generate, ruleOpenings, rulePages, stockTexts } from './generate.mjs';
import { leanFont } from './lean-font.mjs';
import { notices } from './notices.mjs';
import { dist, root } from './paths.mjs';
import { task } from './task.mjs';

/** Said by the terminal command on a Node that cannot run it, in words that such a Node can read. */
const nodeCheck = `if (parseInt(process.versions.node, 10) < 22) {
  console.error('laybook needs Node 22 or newer; this is ' + process.versions.node);
  process.exit(2);
}`;

export const programs = [
  {
    source: 'extension/client.ts',
    target: 'extension.cjs',
    external: ['vscode'],
  },
  { source: 'language/server-node.ts', target: 'server.cjs', runs: 'sharing' },
  {
    source: 'extension/client-browser.ts',
    // .cjs: package.json says that .js is of the other kind of module, which the worker of an editor cannot load
    target: 'extension-browser.cjs',
    external: ['vscode'],
    runs: 'browserModule',
  },
  { source: 'language/server-browser.ts', target: 'server-browser.js', runs: 'page' },
  { source: 'extension/card/webview/main.ts', target: 'layer-card.js', runs: 'page' },
  { source: 'extension/card/webview/layer-card.css', target: 'layer-card.css', runs: 'page' },
  { source: 'extension/plan/webview/main.ts', target: 'plan.js', runs: 'page' },
  { source: 'extension/plan/webview/plan.css', target: 'plan.css', runs: 'page' },
  { source: 'extension/paper/webview/main.ts', target: 'paper.js', runs: 'page' },
  { source: 'extension/paper/webview/paper.css', target: 'paper.css', runs: 'page' },
  {
    source: 'language/terminal/start.ts',
    target: 'laybook.cjs',
    banner: nodeCheck,
    executable: true,
  },
  { source: 'language/terminal/main.ts', target: 'laybook-main.cjs', runs: 'sharing' },
  // What makes PDF files is as large as all the rest: server and terminal load it when one is wanted.
  {
    source: 'language/export/pdf/index.ts',
    target: 'pdf.cjs',
    banner: "const moduleUrl = require('node:url').pathToFileURL(__filename).href;",
    define: { 'import.meta.url': 'moduleUrl', 'import.meta.dirname': '__dirname' },
  },
];

/** Fonts that lie beside `pdf.cjs`, and the package that they come from. */
const fontPackage = 'node_modules/dejavu-fonts-ttf';
const fonts = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'];

/** How esbuild writes a program, by where it runs. */
const kinds = {
  node: { platform: 'node', format: 'cjs', target: 'node22', mainFields: ['module', 'main'] },
  /** Script and style of a page that the editor shows, and of a web worker. */
  page: { platform: 'browser', format: 'iife', target: 'es2022' },
  /** What an editor in a browser loads as an extension. */
  browserModule: { platform: 'browser', format: 'cjs', target: 'es2022' },
};

/** What is the same for every program. */
const settings = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  plugins,
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
};

async function buildOne(
  { source, target, external = [], banner = '', define = {}, executable, runs = 'node' },
  folder,
) {
  const { metafile } = await bundle({
    ...settings,
    ...kinds[runs],
    plugins: runs === 'node' ? [...plugins, textsBeside] : plugins,
    entryPoints: [source],
    outfile: path.join(folder, target),
    external,
    define,
    banner: { js: `${executable ? '#!/usr/bin/env node\n' : ''}${banner}` },
  });
  return [[target, metafile]];
}

/**
 * Builds server and terminal, which have nearly all of them in common: that lies beside them in files `part-...`, of which
 * a command of the terminal reads those that it needs. esbuild parts modules of the newer kind alone, so each file is written anew in the
 * older kind, which Node keeps compiled and loads at once.
 */
async function buildSharing(sharing, folder) {
  const { metafile, outputFiles } = await bundle({
    ...settings,
    ...kinds.node,
    plugins: [...plugins, textsBeside],
    format: 'esm',
    splitting: true,
    write: false,
    entryPoints: sharing.map(({ source, target }) => ({ in: source, out: path.parse(target).name })),
    outdir: folder,
    outExtension: { '.js': '.cjs' },
    chunkNames: 'part-[hash]',
  });
  mkdirSync(folder, { recursive: true });
  for (const old of readdirSync(folder).filter((name) => name.startsWith('part-'))) rmSync(path.join(folder, old));
  for (const { path: file, text } of outputFiles) {
    const { platform, format, target } = kinds.node;
    const { code } = await transform(text, { platform, format, target, minify: true, legalComments: 'none' });
    writeFileSync(file, code);
  }
  return Object.entries(metafile.outputs).map(([file, output]) => {
    const inputs = Object.fromEntries(Object.keys(output.inputs).map((each) => [each, metafile.inputs[each]]));
    return [path.basename(file), { inputs, outputs: { [file]: output } }];
  });
}

/** Bundles the programs; returns esbuild's account of what each bundle holds, by name. */
export async function build(chosen = programs, folder = dist) {
  const isSharing = ({ runs }) => runs === 'sharing';
  const results = await Promise.all([
    ...chosen.filter((each) => !isSharing(each)).map((each) => buildOne(each, folder)),
    // one of them cannot be built without the others: what they share would not be the same
    ...(chosen.some(isSharing) ? [buildSharing(programs.filter(isSharing), folder)] : []),
  ]);
  return Object.fromEntries(results.flat());
}

/** Files that a program reads at its start, itself the first; what is loaded when it is wanted is not among them. */
export function loadedBy(program, folder = dist) {
  const files = new Set([program]);
  for (const file of files) {
    const code = readFileSync(path.join(folder, file), 'utf8');
    for (const [, part] of code.matchAll(/\brequire\("\.\/(part-\w+\.cjs)"\)/g)) files.add(part);
  }
  return [...files];
}

/** Puts the fonts beside the programs in a folder. */
export function copyFonts(folder) {
  mkdirSync(path.join(folder, 'fonts'), { recursive: true });
  for (const font of fonts) {
    const whole = readFileSync(path.join(root, fontPackage, 'ttf', font));
    writeFileSync(path.join(folder, 'fonts', font), leanFont(whole));
  }
}

/** Puts the texts beside the programs in a folder. */
export function writeTexts(folder) {
  const write = (file, texts) => writeFileSync(path.join(folder, file), JSON.stringify(Object.fromEntries(texts)));
  write('rule-pages.json', rulePages());
  write('rule-openings.json', ruleOpenings());
  write('stock.json', stockTexts());
}

/** Empties dist/ and fills it: the programs and the licences of what is inside them. */
export async function buildAll() {
  rmSync(dist, { recursive: true, force: true });
  const metafiles = await build();
  copyFonts(dist);
  writeFileSync(path.join(dist, 'third-party-notices.txt'), notices(metafiles, [fontPackage]));
  writeTexts(dist);
  writeFileSync(path.join(dist, 'sample-files.json'), JSON.stringify(filesBelow('extension/sample', '')));
  return metafiles;
}

await task(import.meta.filename, async () => {
  generate();
  for (const [target, { outputs }] of Object.entries(await buildAll())) {
    const bytes = Object.values(outputs).reduce((sum, output) => sum + output.bytes, 0);
    console.log(`dist/${target}  ${(bytes / 1024).toFixed(0)} kB`);
  }
});
