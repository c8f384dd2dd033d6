/** The package that users install: what is in it, how large it is, whether all that the manifest names is there. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { manifestIn } from '../harness/manifest.ts';
import { files, root, text } from '../harness/sources.ts';
import { runVsce, vsix } from '../setup/package.mjs';
import { dist } from '../setup/paths.mjs';

/** A good part below the 3 MB that nobody minds, so that there is room to grow. */
const sizeLimit = 2.5 * 1024 * 1024;

/** Everything but the sample workshop, the pictures of the readme and the parts of server and terminal, which go in whole. */
const packed = [
  'CHANGELOG.md',
  'LICENSE',
  'README.md',
  'dist/extension-browser.cjs',
  'dist/extension.cjs',
  'dist/fonts/DejaVuSans-Bold.ttf',
  'dist/fonts/DejaVuSans.ttf',
  'dist/laybook-main.cjs',
  'dist/laybook.cjs',
  'dist/layer-card.css',
  'dist/layer-card.js',
  'dist/paper.css',
  'dist/paper.js',
  'dist/pdf.cjs',
  'dist/plan.css',
  'dist/plan.js',
  'dist/rule-openings.json',
  'dist/rule-pages.json',
  'dist/sample-files.json',
  'dist/server-browser.js',
  'dist/server.cjs',
  'dist/stock.json',
  'dist/third-party-notices.txt',
  'extension/generated/snippets.de.json',
  'extension/icons/laybook.png',
  'extension/icons/layup-dark.svg',
  'extension/icons/layup-light.svg',
  'extension/l10n/bundle.l10n.de.json',
  'extension/language-configuration.json',
  'extension/snippets.json',
  'extension/walkthrough/figures.svg',
  'extension/walkthrough/finding.svg',
  'extension/walkthrough/recipe.svg',
  'extension/walkthrough/sample.svg',
  'extension/walkthrough/units.svg',
  'extension/walkthrough/workshop.svg',
  'language/l10n/de.json',
  'language/terminal/schemas/check.json',
  'language/terminal/schemas/report.json',
  'package.json',
  'package.nls.de.json',
  'package.nls.json',
  'syntaxes/layup.tmLanguage.json',
  'syntaxes/markdown-layup.tmLanguage.json',
];

const manifest = manifestIn('en');

/** All texts inside a value. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}

describe('the package', () => {
  it('has been made: `npm run package`', () => {
    expect(existsSync(vsix)).toBe(true);
  });

  it('holds these files and no other', () => {
    const listed = runVsce(['ls', '--no-dependencies']).split('\n').filter(Boolean).sort();
    const parts = readdirSync(dist).filter((name) => /^part-[A-Z0-9]{8}\.cjs$/.test(name));
    expect(parts.length).toBeGreaterThan(1);
    const whole = files.filter((file) => /^extension\/(sample|pictures)\//.test(file));
    expect(listed).toEqual([...packed, ...whole, ...parts.map((name) => `dist/${name}`)].sort());
  }, 60_000);

  it('is smaller than 2.5 MB', () => {
    expect(statSync(vsix).size).toBeLessThan(sizeLimit);
  });
});

describe('the manifest', () => {
  it('names only files that are there', () => {
    const { main, browser, bin, icon, contributes } = manifest;
    const named = [icon, ...textsIn({ main, browser, bin, contributes }).filter((each) => each.startsWith('./'))];
    expect(named.length).toBeGreaterThan(6);
    expect(named.filter((file) => !existsSync(path.join(root, file)))).toEqual([]);
  });

  it('has a gallery icon of at least 128 by 128 pixels', () => {
    // The size stands in the first chunk of a PNG file (ISO/IEC 15948, 11.2.2).
    const png = readFileSync(path.join(root, manifest.icon));
    expect(png.toString('latin1', 1, 4)).toBe('PNG');
    expect(png.readUInt32BE(16)).toBeGreaterThanOrEqual(128);
    expect(png.readUInt32BE(20)).toBe(png.readUInt32BE(16));
  });

  it('is declared to run in a browser, near the files, on virtual folders and where nothing is trusted', () => {
    // `.cjs`: else an editor takes it for a module of the kind that it cannot load in a worker, since package.json says so.
    expect(manifest.browser).toMatch(/^\.\/dist\/.*\.cjs$/);
    expect(manifest.extensionKind).toEqual(['workspace']);
    expect(manifest.capabilities).toMatchObject({
      untrustedWorkspaces: { supported: 'limited', restrictedConfigurations: ['laybook.sheet.font'] },
      virtualWorkspaces: true,
    });
    // What a workspace could name in its settings must not be a program or a file that is opened.
    const settings = Object.keys(manifest.contributes.configuration.properties);
    expect(settings.filter((name) => /path|command|program|executable|file/i.test(name))).toEqual([]);
  });

  it('describes every setting, and each has a default', () => {
    const settings = Object.entries<Record<string, unknown>>(manifest.contributes.configuration.properties);
    const bare = settings.filter(
      ([, { markdownDescription, default: value }]) => !markdownDescription || value === undefined,
    );
    expect(bare.map(([name]) => name)).toEqual([]);
  });

  it('offers exactly the commands that the extension registers', () => {
    const client = files
      .filter((file) => /^extension\/.*\.ts$/.test(file))
      .map(text)
      .join('\n');
    const registered = [...client.matchAll(/registerCommand\(\s*'([^']+)'/g)].map(([, name]) => name);
    const offered = manifest.contributes.commands.map(({ command }: { command: string }) => command);
    expect(offered.sort()).toEqual(registered.sort());
  });

  it('has a walkthrough of at most six steps, each with a picture and a button that runs a command', () => {
    const { walkthroughs, commands } = manifest.contributes;
    const own = commands.map(({ command }: { command: string }) => command);
    for (const { steps } of walkthroughs) {
      expect(steps.length).toBeLessThanOrEqual(6);
      for (const { description, media, completionEvents } of steps) {
        const command = /\]\(command:([\w.]+)/.exec(description)?.[1];
        expect(command?.startsWith('workbench.') || own.includes(command)).toBe(true);
        expect(existsSync(path.join(root, media.svg))).toBe(true);
        expect(media.altText).not.toBe('');
        expect(completionEvents.some((event: string) => command !== undefined && event.includes(command))).toBe(true);
      }
    }
  });

  it('paints its walkthrough in the colours of the theme alone', () => {
    const pictures = files.filter((file) => /^extension\/walkthrough\/.*\.svg$/.test(file));
    expect(pictures.length).toBeGreaterThan(0);
    const fixed = pictures.filter((file) => /(fill|stroke)="(?!none|var\(--vscode-)/.test(text(file)));
    expect(fixed).toEqual([]);
  });
});
