/** Keeps the structure that DEVELOPERS.md describes: layers from the import graph, and what must not be in the text. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { files, importsOf, root, text } from './harness/sources.ts';

const lineLimit = 350;

const topFolders = ['calc', 'extension', 'language', 'syntaxes', 'tests'];

/** What the files of a folder may import: our folders, and packages by the beginning of their names. */
const layers: readonly { within: RegExp; ours: readonly string[]; packages: RegExp }[] = [
  // Of libraries, calc has those that are pure: polygons on whole numbers, the grammar of XML.
  { within: /^calc\//, ours: ['calc'], packages: /^(clipper2-ts|saxes)$/ },
  // The protocol is known where requests are answered and where a connection is made, nowhere else.
  {
    within: /^language\/(lsp\/|server-)/,
    ours: ['language', 'calc'],
    packages: /^(node:|langium|chevrotain|vscode-languageserver|vscode-uri)/,
  },
  // Both hand services to the server: types and base classes of its library.
  { within: /^language\/(book|analysis)\//, ours: ['language', 'calc'], packages: /^(node:|langium|vscode-uri)/ },
  {
    within: /^language\/terminal\//,
    ours: ['language', 'calc'],
    packages: /^(node:|langium(?!\/lsp)|commander|vscode-uri)/,
  },
  // Codes that a machine reads: a pure library draws them.
  { within: /^language\/export\/code\.ts$/, ours: ['language', 'calc'], packages: /^uqr$/ },
  // PDF files are made where there is a disk with fonts.
  { within: /^language\/export\/pdf\//, ours: ['language', 'calc'], packages: /^(node:|pdfkit$)/ },
  // What server and extension say to each other: plain data, nothing else.
  { within: /^language\/protocol\//, ours: ['language/protocol'], packages: /^$/ },
  { within: /^language\//, ours: ['language', 'calc'], packages: /^(langium(?!\/lsp|\/node)|chevrotain)/ },
  {
    within: /^extension\//,
    ours: ['extension', 'language/protocol'],
    packages: /^vscode(-languageclient(\/node|\/browser)?)?$/,
  },
];

const sources = files.filter((file) => /\.(ts|mjs|cjs)$/.test(file) && existsSync(path.join(root, file)));
const typescript = sources.filter((file) => file.endsWith('.ts'));
const imports = typescript.flatMap(importsOf);
const isGenerated = (file: string): boolean => file.includes('/generated/');

/** Lines of the given files that match, as `file:line: text`. */
const linesWith = (pattern: RegExp, among: readonly string[]): string[] =>
  among.flatMap((file) =>
    text(file)
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${file}:${index + 1}: ${line.trim()}`] : [])),
  );

describe('layers', () => {
  const layerOf = (file: string) => layers.find(({ within }) => within.test(file));

  it('import only what is below them', () => {
    const wrong = imports.filter(({ from, to, ours }) => {
      const layer = layerOf(from);
      if (!layer) return false;
      return ours ? !layer.ours.some((folder) => to.startsWith(`${folder}/`)) : !layer.packages.test(to);
    });
    expect(wrong.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  it('import only files that exist', () => {
    const missing = imports.filter(({ to, ours }) => ours && !isGenerated(to) && !files.includes(to));
    expect(missing.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  it('import only packages that package.json names', () => {
    const { dependencies, devDependencies } = JSON.parse(text('package.json'));
    const known = new Set([...Object.keys(dependencies), ...Object.keys(devDependencies), 'vscode']);
    const packageOf = (name: string): string => /^(@[^/]+\/)?[^/]+/.exec(name)?.[0] ?? name;
    const strange = imports.filter(({ to, ours }) => !ours && !to.startsWith('node:') && !known.has(packageOf(to)));
    expect(strange.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  it('have no rings of imports', () => {
    const next = Map.groupBy(
      imports.filter(({ ours, typeOnly }) => ours && !typeOnly),
      ({ from }) => from,
    );
    const done = new Set<string>();
    const rings: string[] = [];
    const visit = (file: string, trail: readonly string[]): void => {
      if (trail.includes(file)) rings.push([...trail.slice(trail.indexOf(file)), file].join(' -> '));
      if (trail.includes(file) || done.has(file)) return;
      for (const { to } of next.get(file) ?? []) visit(to, [...trail, file]);
      done.add(file);
    };
    for (const file of typescript) visit(file, []);
    expect(rings).toEqual([]);
  });

  it('calc has no clock and no chance of its own', () => {
    const calc = sources.filter((file) => file.startsWith('calc/'));
    expect(calc.length).toBeGreaterThan(0);
    expect(linesWith(/\bMath\.random\b|\bDate\.now\b|\bnew Date\(\)|\bperformance\.now\b/, calc)).toEqual([]);
  });
});

describe('files', () => {
  it('lie in the folders that are described', () => {
    const folders = files.filter((file) => file.includes('/')).map((file) => file.split('/')[0] ?? '');
    expect([...new Set(folders)].filter((folder) => !folder.startsWith('.')).sort()).toEqual(topFolders);
  });

  it(`have at most ${lineLimit} lines`, () => {
    const long = sources.filter((file) => text(file).split('\n').length > lineLimit);
    expect(long.map((file) => `${file}: ${text(file).split('\n').length} lines`)).toEqual([]);
  });

  it('name no place of one machine', () => {
    const written = files.filter(
      (file) => /\.(ts|mjs|cjs|md|json|layup|langium|sh)$/.test(file) && existsSync(path.join(root, file)),
    );
    expect(linesWith(/(^|[\s'"`(=])\/(work|root|home|Users)\/\w/, written)).toEqual([]);
    expect(linesWith(/\b[A-Z]:\\\\?Users\\/, written)).toEqual([]);
  });

  it('are finished: nothing left out, switched off or silenced', () => {
    // Put together here, so that this file does not find itself.
    const marks = ['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X', 'HA' + 'CK'].join('|');
    const silenced = ['@ts-' + '(ignore|expect-error|nocheck)', '\\bas ' + 'any\\b', ': ' + 'any\\b'].join('|');
    const switchedOff = `\\b(it|test|describe|suite)\\.(sk${'ip'}|on${'ly'}|to${'do'})\\b`;
    expect(linesWith(new RegExp(`\\b(${marks})\\b|${silenced}|${switchedOff}`), sources)).toEqual([]);
  });
});

describe('rules', () => {
  const inGroups = files.filter((file) => /^language\/rules\/(?!kit\/)[^/]+\/[^/]+$/.test(file) && !isGenerated(file));

  it('have each their page, and each page its rule', () => {
    const names = (ending: string): string[] =>
      inGroups.filter((file) => file.endsWith(ending)).map((file) => file.slice(0, -ending.length));
    expect(names('.ts').sort()).toEqual(names('.md').sort());
  });
});
