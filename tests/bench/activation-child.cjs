// Loads the bundled extension with a stand-in for the `vscode` module that answers anything with itself, so that what is
// measured is the extension's own code. Prints the milliseconds of loading and of `activate`.
const { readFileSync } = require('node:fs');
const Module = require('node:module');
const path = require('node:path');

/** A class, function and namespace at once, whatever is asked of it. */
function anything() {
  const kept = new Map();
  const stand = new Proxy(class {}, {
    get(target, key) {
      if (key === 'prototype' || typeof key === 'symbol') return target[key];
      if (key === 'then') return undefined;
      if (key === 'version') return '1.101.0';
      if (key === 'language') return 'de';
      if (!kept.has(key)) kept.set(key, anything());
      return kept.get(key);
    },
    // what is set is forgotten: a class has a name of its own, which cannot be set
    set: () => true,
    apply: () => anything(),
    construct: (target, args, made) => (made === stand ? anything() : Reflect.construct(target, args, made)),
  });
  return stand;
}

const api = anything();
// The bundle copies the names of the module as it loads: those that the real one has.
const declared = readFileSync(require.resolve('@types/vscode/index.d.ts'), 'utf8');
const names = [...declared.matchAll(/^\texport (?:namespace|class|enum) (\w+)/gm)].map(([, name]) => name);
const named = Object.fromEntries(names.map((name) => [name, api[name]]));
const vscode = new Proxy(named, { get: (target, key) => target[key] ?? api[key] });

const load = Module._load;
Module._load = (name, ...rest) => (name === 'vscode' ? vscode : load(name, ...rest));

const folder = process.argv[2];
const started = performance.now();
const extension = require(path.join(folder, 'dist/extension.cjs'));
const loaded = performance.now();
const context = {
  asAbsolutePath: (file) => path.join(folder, file),
  subscriptions: [],
  extension: anything(),
  extensionUri: anything(),
  globalState: anything(),
};
// the client starts once the texts in the editor's language have been read
Promise.resolve(extension.activate(context)).then(() => {
  console.log(JSON.stringify({ load: loaded - started, activate: performance.now() - loaded }));
  process.exit(0);
});
