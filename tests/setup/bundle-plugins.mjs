// What esbuild does otherwise than by itself when it bundles the programs.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';

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

/** Texts that lie beside the programs that run on Node, in one file for all of them: module of the text, its name, the file. */
const texts = [
  { module: 'language/rules/generated/pages.ts', name: 'pages', file: 'rule-pages.json' },
  { module: 'language/rules/generated/openings.ts', name: 'openings', file: 'rule-openings.json' },
  { module: 'language/book/generated/stock-texts.ts', name: 'stock', file: 'stock.json' },
];

export const textsBeside = {
  name: 'texts-beside',
  setup({ onLoad }) {
    for (const { module, name, file } of texts) {
      onLoad({ filter: new RegExp(`${module.replaceAll('/', '[\\\\/]').replace('.', '\\.')}$`) }, () => ({
        contents: `import { readFileSync } from 'node:fs';
          export const ${name} = JSON.parse(readFileSync(require('node:path').join(__dirname, '${file}'), 'utf8'));`,
      }));
    }
  },
};

/** Of the library for polygons only what is used: its own list of all that it can do would bring in the rest. */
const polygonsInPart = {
  name: 'polygons-in-part',
  setup({ onResolve, onLoad }) {
    const namespace = 'polygons-in-part';
    onResolve({ filter: /^clipper2-ts$/ }, () => ({ path: 'clipper2-ts', namespace }));
    onLoad({ filter: /.*/, namespace }, () => ({
      contents: "export * from './Core.js'; export * from './Engine.js'; export * from './Offset.js';",
      resolveDir: path.join(root, 'node_modules/clipper2-ts/dist'),
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

/**
 * The names of the editor's module, taken once. Without this they are copied, one by one, for each file that imports them:
 * by esbuild for ours, and by what TypeScript made of the language client for its own, which leaves a module alone that
 * says that it is one. That was a fourth of the time of activation.
 */
const editorOnce = {
  name: 'editor-once',
  setup({ onResolve, onLoad }) {
    const namespace = 'editor-once';
    onResolve({ filter: /^vscode$/ }, ({ kind, namespace: from }) => {
      if (from === namespace) return undefined;
      return { path: kind === 'import-statement' ? 'names' : 'module', namespace };
    });
    onResolve({ filter: /^editor-module$/ }, () => ({ path: 'module', namespace }));
    onLoad({ filter: /^module$/, namespace }, () => ({
      contents: "module.exports = Object.create(require('vscode'), { __esModule: { value: true } });",
    }));
    onLoad({ filter: /^names$/, namespace }, () => {
      const declared = readFileSync(path.join(root, 'node_modules/@types/vscode/index.d.ts'), 'utf8');
      const names = new Set(
        [...declared.matchAll(/^\texport (?:namespace|class|enum|const|let|function) (\w+)/gm)].map(([, name]) => name),
      );
      // marked as pure: what nobody asks for is left out
      const taken = [...names].map((name) => `export const ${name} = /* @__PURE__ */ take('${name}');\n`).join('');
      return { contents: `const editor = require('editor-module');\nconst take = (name) => editor[name];\n${taken}` };
    });
  },
};

/** Two versions of the same declarations of the protocol: the newer, which both its users are content with, serves for both. */
const typesOnce = {
  name: 'types-once',
  setup({ onResolve }) {
    const filter = /^vscode-languageserver-types$/;
    onResolve({ filter }, () => ({
      path: path.join(root, 'node_modules/vscode-languageserver-types/lib/esm/main.js'),
    }));
  },
};

/** Comments of the notation are not documentation in the manner of Java; what reads such is left out. */
const noJavaComments = {
  name: 'no-java-comments',
  setup({ onLoad }) {
    onLoad({ filter: /langium[\\/]lib[\\/]documentation[\\/]jsdoc\.js$/ }, () => ({
      contents: `export const isJSDoc = () => false;
        export const parseJSDoc = () => { throw new Error('comments are not read as documentation'); };`,
    }));
  },
};

/** What holds for every program; `textsBeside` for those that run on Node. */
export const plugins = [pdfBeside, terminalBeside, polygonsInPart, noWebFonts, editorOnce, typesOnce, noJavaComments];
