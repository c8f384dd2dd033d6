// Bundles the programs into dist/: the extension's client and the language server, each for Node and for a browser, the
// script of its page, and the terminal command.
import { cpSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { build as bundle } from 'esbuild';
import { filesBelow } from './files.mjs';
import { generate, rulePages } from './generate.mjs';
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
  { source: 'language/server-node.ts', target: 'server.cjs' },
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
  { source: 'language/terminal/main.ts', target: 'laybook-main.cjs' },
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

/** A program that asks for `pdf/index.ts` when it is wanted gets the bundle beside it. */
const pdfBeside = {
  name: 'pdf-beside',
  setup({ onResolve }) {
    onResolve({ filter: /\/pdf\/index\.ts$/ }, ({ kind }) =>
      kind === 'dynamic-import' ? { path: './pdf.cjs', external: true } : undefined,
    );
  },
};

/** The terminal command starts the bundle beside it. */
const terminalBeside = {
  name: 'terminal-beside',
  setup({ onResolve }) {
    onResolve({ filter: /^\.\/main\.ts$/ }, ({ kind }) =>
      kind === 'require-call' ? { path: './laybook-main.cjs', external: true } : undefined,
    );
  },
};

/** Pages of the rules lie beside the programs, in one file for all of them. */
const pagesBeside = {
  name: 'pages-beside',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]rules[\\/]generated[\\/]pages\.ts$/ }, () => ({
      contents: `import { readFileSync } from 'node:fs';
        export const pages = JSON.parse(readFileSync(require('node:path').join(__dirname, 'rule-pages.json'), 'utf8'));`,
    }));
  },
};

/** Fonts of the web (WOFF2) are not read here: what unpacks them is half a megabyte. */
const noWebFonts = {
  name: 'no-web-fonts',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^brotli\// }, () => ({ path: 'brotli', namespace: 'no-web-fonts' }));
    onLoad({ filter: /.*/, namespace: 'no-web-fonts' }, () => ({
      contents:
        "export default () => { throw new Error('a font of the web (WOFF2) cannot be read: take a .ttf or .otf') };",
    }));
  },
};

/** How esbuild writes a program, by where it runs. */
const kinds = {
  node: { platform: 'node', format: 'cjs', target: 'node22', mainFields: ['module', 'main'] },
  /** Script and style of a page that the editor shows, and of a web worker. */
  page: { platform: 'browser', format: 'iife', target: 'es2022' },
  /** What an editor in a browser loads as an extension. */
  browserModule: { platform: 'browser', format: 'cjs', target: 'es2022' },
};

/** Bundles the programs; returns esbuild's account of what each bundle holds, by name. */
export async function build(chosen = programs, folder = dist) {
  const results = await Promise.all(
    chosen.map(
      async ({ source, target, external = [], banner = '', define = {}, executable = false, runs = 'node' }) => {
        const result = await bundle({
          absWorkingDir: root,
          entryPoints: [source],
          outfile: path.join(folder, target),
          bundle: true,
          minify: true,
          ...kinds[runs],
          external,
          define,
          plugins: [pdfBeside, terminalBeside, pagesBeside, noWebFonts],
          legalComments: 'none',
          metafile: true,
          logLevel: 'warning',
          banner: {
            js: `${executable ? '#!/usr/bin/env node\n' : ''}${banner}`,
          },
        });
        return [target, result.metafile];
      },
    ),
  );
  return Object.fromEntries(results);
}

/** Puts the fonts beside the programs in a folder. */
export function copyFonts(folder) {
  for (const font of fonts) cpSync(path.join(root, fontPackage, 'ttf', font), path.join(folder, 'fonts', font));
}

/** Empties dist/ and fills it: the programs and the licences of what is inside them. */
export async function buildAll() {
  rmSync(dist, { recursive: true, force: true });
  const metafiles = await build();
  copyFonts(dist);
  writeFileSync(path.join(dist, 'third-party-notices.txt'), notices(metafiles, [fontPackage]));
  writeFileSync(path.join(dist, 'rule-pages.json'), JSON.stringify(Object.fromEntries(rulePages())));
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
