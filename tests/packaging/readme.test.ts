/** The readme: what it shows and names is there. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { manifestIn } from '../harness/manifest.ts';
import { laybook } from '../harness/terminal.ts';
import { filesBelow } from '../setup/files.mjs';

const root = path.resolve(import.meta.dirname, '../..');
const readme = readFileSync(path.join(root, 'README.md'), 'utf8');
const manifest = manifestIn('en');

const pictures = [...readme.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)].map(([, words = '', file = '']) => ({
  words,
  file,
}));

describe('the readme', () => {
  it('shows pictures that are there, in words too, all of them taken by the script, none very large', () => {
    expect(pictures.map(({ file }) => file).sort()).toEqual(
      filesBelow('extension/pictures', '.png').map((name: string) => `extension/pictures/${name}`),
    );
    const script = readFileSync(path.join(root, 'tests/setup/pictures.mjs'), 'utf8');
    for (const { words, file } of pictures) {
      expect(words.length).toBeGreaterThan(40);
      expect(script).toContain(`name: '${path.basename(file, '.png')}'`);
      expect(statSync(path.join(root, file)).size).toBeLessThan(100_000);
    }
  });

  it('has a row for every setting, with its default, and for no other', () => {
    const rows = [...readme.matchAll(/^\| `(laybook\.[\w.]+)` \| `([^`]*)` \|/gm)].map(([, name, value]) => [
      name,
      value,
    ]);
    const settings = Object.entries<{ readonly default: unknown }>(manifest.contributes.configuration.properties);
    expect(rows).toEqual(settings.map(([name, { default: value }]) => [name, JSON.stringify(value)]));
  });

  it('names commands, subcommands and files that there are', async () => {
    const titles = manifest.contributes.commands.map(({ title }: { readonly title: string }) => title);
    for (const [, title] of readme.matchAll(/[*]+Laybook: ([^*]+)[*]+/g)) expect(titles).toContain(title);
    const { out } = await laybook(root, '--help');
    const commands = [...readme.matchAll(/^laybook (\w+)/gm)].map(([, name]) => name);
    expect(commands.length).toBeGreaterThan(3);
    for (const name of commands) expect(out).toMatch(new RegExp(`^ +${name}\\b`, 'm'));
    for (const [, file = ''] of readme.matchAll(/[^!]\[[^\]]+\]\(([^):]+)\)/g))
      expect(existsSync(path.join(root, file))).toBe(true);
  });

  it('says what it certifies and what it sends: nothing', () => {
    expect(readme).toMatch(/certifies nothing/);
    expect(readme).toMatch(/sends nothing/);
  });
});
