/** `laybook format` and `laybook explain`, and the command as a process of its own. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { rules } from '../../language/rules/generated/rules.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const untidy = 'fabric  cloth "Cloth"   {\nroll 1000 mm by 30 m   // kept\n}\n';
const tidy = 'fabric cloth "Cloth" {\n  roll 1000 mm by 30 m   // kept\n}\n';

const folders: { dispose(): void }[] = [];
const made = (files: Readonly<Record<string, string | Uint8Array>>): string => {
  const made = folderOf(files);
  folders.push(made);
  return made.folder;
};
afterEach(() => {
  for (const folder of folders.splice(0)) folder.dispose();
});

describe('format', () => {
  it('writes what is not in its form, and nothing else', async () => {
    const folder = made({ 'a.layup': untidy, 'b/c.layup': tidy });
    const { code, out } = await laybook(folder, 'format', '.');
    expect(code).toBe(0);
    expect(out).toBe('formatted: a.layup\n2 files read: 1 changed.\n');
    expect(readFileSync(path.join(folder, 'a.layup'), 'utf8')).toBe(tidy);
    expect(readdirSync(folder).sort()).toEqual(['a.layup', 'b']);
    expect((await laybook(folder, 'format', '.')).out).toBe('2 files read: 0 changed.\n');
  });

  it('only looks with --check, and ends with 1', async () => {
    const folder = made({ 'a.layup': untidy });
    const { code, out } = await laybook(folder, 'format', '--check', 'a.layup');
    expect(code).toBe(1);
    expect(out).toContain('not in its form: a.layup');
    expect(readFileSync(path.join(folder, 'a.layup'), 'utf8')).toBe(untidy);
  });

  it('leaves alone what is not UTF-8 or longer than any recipe', async () => {
    const bytes = Buffer.concat([Buffer.from(untidy), Buffer.from([0xe9, 0x0a])]);
    const long = `${untidy}// ${'x'.repeat(1_000_001)}\n`;
    const folder = made({ 'latin.layup': bytes, 'long.layup': long });
    const { code, err } = await laybook(folder, 'format', '.');
    expect(code).toBe(2);
    expect(err).toContain('latin.layup is not written in UTF-8');
    expect(err).toContain('long.layup is longer than any recipe');
    expect(readFileSync(path.join(folder, 'latin.layup')).equals(bytes)).toBe(true);
    expect(readFileSync(path.join(folder, 'long.layup'), 'utf8')).toBe(long);
  });

  it('wants a path', async () => {
    expect((await laybook(root, 'format')).code).toBe(2);
  });
});

describe('explain', () => {
  it('tells the page of every rule', async () => {
    for (const { name, severity } of rules) {
      const { code, out } = await laybook(root, 'explain', name);
      expect([name, code]).toEqual([name, 0]);
      expect(out.startsWith(`${name} (${severity}): `)).toBe(true);
      for (const chapter of ['What it checks', 'What goes wrong at the bench', 'How to mend it', 'Source'])
        expect(out).toContain(chapter);
      expect(out).not.toContain('```');
    }
  });

  it('proposes names that are spelled alike', async () => {
    const { code, err, out } = await laybook(root, 'explain', 'unit/mising');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('unit/missing');
    for (const name of ['constructor', '__proto__', '']) expect((await laybook(root, 'explain', name)).code).toBe(2);
  });
});

describe('as a process', () => {
  const entry = path.join(root, 'language/terminal/main.ts');
  const spawn = (args: readonly string[], env: Readonly<Record<string, string>> = {}) =>
    spawnSync(process.execPath, [entry, ...args], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, LC_ALL: 'C', ...env },
    });

  it('tells the same as in this process, without colours where nobody sees them', async () => {
    const args = ['check', 'extension/sample/first_try.layup'];
    const { status, stdout, stderr } = spawn(args, { FORCE_COLOR: '1' });
    const here = await laybook(root, ...args);
    expect([status, stderr]).toEqual([1, '']);
    expect(stdout).toBe(here.out);
    expect(stdout).not.toContain('\u001b');
  });

  it('hands over all of a long answer', () => {
    const { status, stdout } = spawn(['report', 'sled_deck', 'extension/sample', '--format', 'json']);
    expect(status).toBe(0);
    expect(() => JSON.parse(stdout)).not.toThrow();
  });

  it('ends with 2 for a wrong call', () => {
    expect(spawn(['report']).status).toBe(2);
  });
});
