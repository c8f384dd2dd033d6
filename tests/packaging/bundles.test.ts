/** The three programs: all they need is inside them, and what is inside is named with its licence. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Metafile } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { build, programs } from '../setup/build.mjs';
import { bundledPackages, notices } from '../setup/notices.mjs';

/** Licences that let the packages be part of an MIT-licensed program. */
const fitting = /^(MIT|ISC|BSD-[23]-Clause|Apache-2\.0|0BSD|BlueOak-1\.0\.0)$/;

let folder: string;
let metafiles: Readonly<Record<string, Metafile>>;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'laybook-bundles-'));
  metafiles = await build(programs, folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the bundles', () => {
  it('need nothing but Node, and the client VS Code', () => {
    const wanted = Object.entries(metafiles).flatMap(([name, { outputs }]) =>
      Object.values(outputs).flatMap(({ imports }) => imports.map((each) => `${name}: ${each.path}`)),
    );
    const strange = wanted.filter((each) => {
      const module = each.replace(/^[^:]+: (node:)?/, '');
      return !builtinModules.includes(module) && each !== 'extension.cjs: vscode';
    });
    expect(strange).toEqual([]);
  });

  it("carry the editor's side of the protocol in the client alone", () => {
    const packagesOf = (name: string): string[] => {
      const metafile = metafiles[name];
      return metafile ? bundledPackages({ [name]: metafile }) : [];
    };
    const client = 'node_modules/vscode-languageclient';
    expect(packagesOf('extension.cjs')).toContain(client);
    expect([...packagesOf('server.cjs'), ...packagesOf('laybook.cjs')]).not.toContain(client);
  });

  it('name no place of the machine that they were made on', () => {
    for (const name of Object.keys(metafiles)) {
      expect(readFileSync(path.join(folder, name), 'utf8').includes(process.cwd())).toBe(false);
    }
  });
});

describe('the notices', () => {
  it('name every bundled package with a licence that fits and its text', () => {
    const text = notices(metafiles);
    const packages = bundledPackages(metafiles);
    expect(packages.length).toBeGreaterThan(5);
    for (const each of packages) {
      const { name, version, license } = JSON.parse(readFileSync(path.join(each, 'package.json'), 'utf8'));
      expect(license, name).toMatch(fitting);
      expect(text).toContain(`${name} ${version} (${license})`);
    }
  });
});
