/** The programs: all they need is inside them, and what is inside is named with its licence. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Metafile } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../language/export/read-pdf.ts';
import { build, copyFonts, loadedBy, programs, writeTexts } from '../setup/build.mjs';
import { bundledPackages, licenceName, notices } from '../setup/notices.mjs';
import { sample } from '../setup/paths.mjs';

/** What runs in a browser: the extension's client and the server, and the pages that it shows. */
const inBrowser: Readonly<Record<string, number>> = {
  'extension-browser.cjs': 700_000,
  'server-browser.js': 1_850_000,
  'layer-card.js': 50_000,
  'paper.js': 50_000,
  'plan.js': 50_000,
};

/** Licences that let the packages be part of an MIT-licensed program; BSL-1.0 is that of Boost. */
const fitting = /^(MIT|ISC|BSD-[23]-Clause|BSL-1\.0|Apache-2\.0|0BSD|BlueOak-1\.0\.0)$/;

let folder: string;
let metafiles: Readonly<Record<string, Metafile>>;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'laybook-bundles-'));
  metafiles = await build(programs, folder);
  copyFonts(folder);
  writeTexts(folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The modules that a bundle does not hold. */
const importsOf = (name: string): string[] =>
  Object.values(metafiles[name]?.outputs ?? {}).flatMap(({ imports }) => imports.map((each) => each.path));

describe('the bundles', () => {
  it('need nothing but Node, and the client VS Code', () => {
    const wanted = Object.keys(metafiles).flatMap((name) => importsOf(name).map((each) => `${name}: ${each}`));
    const strange = wanted.filter((each) => {
      const module = each.replace(/^[^:]+: (node:)?/, '');
      if (/^(server|part-\w+)\.cjs: \.\/pdf\.cjs$/.test(each)) return false;
      if (/^(server|laybook-main|part-\w+)\.cjs: .*\bpart-\w+\.cjs$/.test(each)) return false;
      if (each === 'laybook.cjs: ./laybook-main.cjs') return false;
      return !builtinModules.includes(module) && !/^extension(-browser)?\.cjs: vscode$/.test(each);
    });
    expect(strange).toEqual([]);
  });

  it('for a browser need no Node, and are no larger than what loads at once', () => {
    for (const [name, limit] of Object.entries(inBrowser)) {
      expect(importsOf(name).filter((each) => each !== 'vscode')).toEqual([]);
      const code = readFileSync(path.join(folder, name), 'utf8');
      const modules = [...code.matchAll(/(?<![.\w])(?:require|import)\(\s*["']([^"']+)["']/g)].map(
        ([, module]) => module,
      );
      expect(modules.filter((each) => each !== 'vscode')).toEqual([]);
      expect(code.match(/["']node:[a-z/]+["']/g)).toBeNull();
      expect(code.match(/\bBuffer\.(?:alloc|from)\b|\bprocess\.(?:on|exit|stdin|stdout)\b|\b__dirname\b/g)).toBeNull();
      expect(statSync(path.join(folder, name)).size).toBeLessThan(limit);
    }
  });

  it("carry the editor's side of the protocol in the client alone", () => {
    const packagesOf = (name: string): string[] => {
      const metafile = metafiles[name];
      return metafile ? bundledPackages({ [name]: metafile }) : [];
    };
    const programParts = Object.keys(metafiles).filter((name) => name.startsWith('part-'));
    const client = 'node_modules/vscode-languageclient';
    for (const name of ['extension.cjs', 'extension-browser.cjs']) expect(packagesOf(name)).toContain(client);
    for (const name of ['server.cjs', 'server-browser.js', 'laybook-main.cjs', ...programParts])
      expect(packagesOf(name)).not.toContain(client);
  });

  it('make PDF files in a part of their own, which the server and the terminal load when one is wanted', () => {
    const holds = (name: string): string[] => Object.keys(metafiles[name]?.inputs ?? {});
    expect(holds('pdf.cjs').some((file) => file.includes('node_modules/pdfkit/'))).toBe(true);
    for (const name of Object.keys(metafiles).filter((each) => each !== 'pdf.cjs')) {
      expect(holds(name).filter((file) => /node_modules\/(pdfkit|fontkit)\/|export\/pdf\//.test(file))).toEqual([]);
    }
    const codes = Object.keys(metafiles).map((name) => readFileSync(path.join(folder, name), 'utf8'));
    // the server, and the commands that draw, cut and fill sheets
    expect(codes.filter((code) => code.includes('import("./pdf.cjs")')).length).toBeGreaterThanOrEqual(4);
    expect(codes.filter((code) => code.includes('require("./pdf.cjs")'))).toEqual([]);
  });

  it('start the server with less than 1.5 MB, and the terminal with no command but the one that is asked for', () => {
    const start = loadedBy('server.cjs', folder);
    expect(start.length).toBeGreaterThan(1);
    const bytes = start.reduce((sum, name) => sum + statSync(path.join(folder, name)).size, 0);
    expect(bytes).toBeGreaterThan(500_000);
    expect(bytes).toBeLessThan(1536 * 1024);
    const held = start.flatMap((name) => Object.keys(metafiles[name]?.inputs ?? {}));
    expect(held).toContain('language/grammar/lexer.ts');
    expect(held.filter((file) => /^language\/(terminal|view\/(sheet|records|reference))\//.test(file))).toEqual([]);
    const command = loadedBy('laybook-main.cjs', folder).flatMap((name) => Object.keys(metafiles[name]?.inputs ?? {}));
    expect(command).toContain('language/terminal/program.ts');
    expect(command).not.toContain('language/terminal/check.ts');
  });

  it('name no place of the machine that they were made on', () => {
    for (const name of Object.keys(metafiles)) {
      expect(readFileSync(path.join(folder, name), 'utf8').includes(process.cwd())).toBe(false);
    }
  });

  it('write PDF files in the letters that lie beside them, and load none of it for anything else', async () => {
    const run = (...args: string[]) =>
      spawnSync(process.execPath, [path.join(folder, 'laybook.cjs'), 'cut', 'sled_deck', sample, ...args], {
        encoding: 'utf8',
      });
    const made = run('--format', 'pdf', '--out', path.join(folder, 'cut'));
    expect([made.status, made.stderr]).toEqual([0, '']);
    const { pages } = await readPdf(readFileSync(path.join(folder, 'cut/sled_deck-pad.pdf')), 'packed-pad');
    expect(pages[0]?.words.map(({ text }) => text).join(' ')).toContain('sled_deck, revision 4: pad');
    for (const part of ['pdf.cjs', 'fonts']) rmSync(path.join(folder, part), { recursive: true });
    expect(run('--format', 'dxf', '--out', path.join(folder, 'cut')).status).toBe(0);
    expect(run('--format', 'pdf', '--out', path.join(folder, 'cut')).stderr).toContain('pdf.cjs');
  }, 60_000);
});

describe('the terminal command', () => {
  it('keeps itself compiled in the cache of the user, and does without where there is none', () => {
    const cache = path.join(folder, 'cache');
    const version = (place: string) =>
      spawnSync(process.execPath, [path.join(folder, 'laybook.cjs'), '--version'], {
        encoding: 'utf8',
        env: { ...process.env, NODE_COMPILE_CACHE: '', XDG_CACHE_HOME: place, LOCALAPPDATA: place, HOME: place },
      });
    const first = version(cache);
    expect([first.status, first.stderr]).toEqual([0, '']);
    const kept = readdirSync(cache, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
    expect(kept.length).toBeGreaterThan(0);
    // the place is a file: nothing can be written below it
    const without = version(path.join(folder, 'laybook.cjs'));
    expect([without.status, without.stdout, without.stderr]).toEqual([0, first.stdout, '']);
  });
});

describe('the notices', () => {
  it('name every bundled package with a licence that fits and its text', () => {
    const text = notices(metafiles);
    const packages = bundledPackages(metafiles);
    expect(packages.length).toBeGreaterThan(5);
    for (const each of packages) {
      const { name, version } = JSON.parse(readFileSync(path.join(each, 'package.json'), 'utf8'));
      const license = licenceName(each);
      expect(license, name).toMatch(fitting);
      expect(text).toContain(`${name} ${version} (${license})`);
    }
  });
});
