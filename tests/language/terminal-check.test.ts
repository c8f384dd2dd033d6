/** `laybook check`: what it tells, whom it tells it of, and how it ends. */
import { chmodSync, readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, describe, expect, it } from 'vitest';
import { folderOf, laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const sample = path.join(root, 'extension/sample');
const schema = JSON.parse(readFileSync(path.join(root, 'language/terminal/schemas/check.json'), 'utf8'));
const valid = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

const folders: { dispose(): void }[] = [];
const made = (files: Readonly<Record<string, string | Uint8Array>>): string => {
  const made = folderOf(files);
  folders.push(made);
  return made.folder;
};
afterEach(() => {
  for (const folder of folders.splice(0)) folder.dispose();
});

const fabric = (line: string): string => `fabric cloth "Cloth" {\n  ${line}\n}\n`;

describe('findings as text', () => {
  it('tell place, words and rule, and underline the place', async () => {
    const { code, out } = await laybook(made({ 'a.layup': fabric('roll 1000 mm by 30 m2') }), 'check');
    expect(code).toBe(1);
    const [head, line, marks] = out.split('\n');
    expect(head).toMatch(/^a\.layup:2:19: error: .+ \[unit\/wrong-dimension\]$/);
    expect(line).toBe('  2 |   roll 1000 mm by 30 m2');
    expect(marks).toBe('    |                   ^^^^^');
    expect(out).toContain('laybook explain unit/wrong-dimension');
    expect(out).toMatch(/1 file checked: 1 error, 0 warnings, \d+ notes?\./);
  });

  it('are in place behind tabs and wide characters', async () => {
    const { out } = await laybook(made({ 'a.layup': 'fabric c "舟形" {\troll 1 m by 2 q\n}\n' }), 'check');
    const lines = out.split('\n');
    const source = lines.findIndex((line) => line.includes('舟形'));
    // the tab reaches from cell 17 to cell 20: each of the two characters takes two cells
    expect(lines[source]).toBe('  1 | fabric c "舟形" {   roll 1 m by 2 q');
    // ... so that the mark below the q stands two columns further than the q is counted
    expect((lines[source + 1]?.lastIndexOf('^') ?? 0) - 2).toBe(lines[source]?.lastIndexOf('q'));
  });

  it('count columns in characters and ranges in UTF-16 units', async () => {
    const folder = made({ 'a.layup': 'fabric cloth "🛷" { roll 1 q\n}\n' });
    const text = await laybook(folder, 'check');
    const json = JSON.parse((await laybook(folder, 'check', '--format', 'json')).out);
    const finding = json.findings.find((each: { rule: string }) => each.rule.startsWith('unit/'));
    expect(finding).toBeDefined();
    const { character } = finding.range.start;
    expect('fabric cloth "🛷" { roll 1 q'.slice(character)).toMatch(/^1 q|^q/);
    expect(text.out).toContain(`a.layup:1:${character}: error`);
  });

  it('keep control characters and direction marks from the screen', async () => {
    const { out } = await laybook(
      made({ 'a.layup': 'fabric cl\u001b[31moth "x\u202ey" { roll 1 q }\n\u0000\n' }),
      'check',
    );
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    expect(out).toContain('error');
  });

  it('cut long lines around the place', async () => {
    const { out } = await laybook(made({ 'a.layup': `fabric c "${'x'.repeat(5000)}" { roll 1 q }\n` }), 'check');
    expect(
      Math.max(
        ...out
          .split('\n')
          .filter((line) => /^ +\d* \|/.test(line))
          .map((line) => line.length),
      ),
    ).toBeLessThan(130);
    const lines = out.split('\n');
    const source = lines.findIndex((line) => line.includes('roll 1 q'));
    expect(lines[source]).toContain('...');
    const [from, to] = [lines[source + 1]?.indexOf('^') ?? 0, lines[source + 1]?.lastIndexOf('^') ?? 0];
    expect(lines[source]?.slice(from, to + 1)).toMatch(/^(1 q|q)$/);
  });
});

describe('findings as JSON', () => {
  it('of the sample follow the schema and are the same bytes every time', async () => {
    const first = await laybook(root, 'check', sample, '--format', 'json');
    const second = await laybook(root, 'check', sample, '--format', 'json');
    expect(second.out).toBe(first.out);
    const told = JSON.parse(first.out);
    expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
    expect(told.findings.length).toBeGreaterThan(10);
    expect(new Set(told.findings.map((finding: { file: string }) => finding.file))).toContain(
      'extension/sample/first_try.layup',
    );
  });

  it('carry the numbers of the message in SI', async () => {
    const { out } = await laybook(root, 'check', path.join(sample, 'first_try.layup'), '--format', 'json');
    const { findings } = JSON.parse(out);
    const short = findings.find((finding: { rule: string }) => finding.rule === 'wrap/short');
    expect(short.severity).toBe('error');
    const lengths = Object.values(short.figures as Record<string, { value: number; unit: string }>).filter(
      ({ unit }) => unit === 'm',
    );
    expect(lengths.map(({ value }) => value)).toContain(0.03);
  });

  it('hold accepted findings with their reason, and these fail nothing', async () => {
    const { code, out } = await laybook(
      root,
      'check',
      path.join(sample, 'sled_deck.layup'),
      '--format',
      'json',
      '--fail-on',
      'warning',
    );
    const told = JSON.parse(out);
    const accepted = told.findings.filter((finding: { accepted: string | null }) => finding.accepted !== null);
    expect(told.summary.accepted).toBe(accepted.length);
    if (accepted.length > 0) expect(accepted[0].accepted).toBe('The tool is flat.');
    expect(code).toBe(told.summary.errors + told.summary.warnings > 0 ? 1 : 0);
  });
});

describe('what is checked', () => {
  const user = 'fabric mine like theirs {\n  roll 1 m by 1 m\n}\n';
  const used = 'fabric theirs "Theirs" {\n  roll 1 m by 2 q\n}\n';

  it('is the paths given; names are looked up in the folders around them', async () => {
    const folder = made({ 'mine.layup': user, 'deep/theirs.layup': used });
    const { out, code } = await laybook(folder, 'check', 'mine.layup', '--format', 'json');
    expect(JSON.parse(out).findings.filter((finding: { rule: string }) => finding.rule.startsWith('name/'))).toEqual(
      [],
    );
    expect(code).toBe(0);
    expect((await laybook(folder, 'check', '.')).code).toBe(1);
  });

  it('looks in another folder with --book', async () => {
    const folder = made({ 'records/mine.layup': user, 'theirs.layup': used });
    const unknown = await laybook(folder, 'check', 'records/mine.layup');
    expect(unknown.out).toContain('theirs');
    expect(unknown.code).toBe(1);
    expect((await laybook(folder, 'check', 'records/mine.layup', '--book', '.')).code).toBe(0);
  });

  it('leaves out node_modules and folders that begin with a dot', async () => {
    const folder = made({
      'a.layup': user.replace(' like theirs', ''),
      'node_modules/x/b.layup': used,
      '.old/c.layup': used,
    });
    const { summary } = JSON.parse((await laybook(folder, 'check', '--format', 'json')).out);
    expect(summary.files).toBe(1);
  });
});

describe('exit codes', () => {
  it('follow --fail-on', async () => {
    const folder = made({
      'clean.layup': fabric('roll 1000 mm by 30 m'),
      'note.layup': fabric('roll 1000 mm by 30 m, accept wrap/short "It is told apart."').replace('cloth', 'other'),
    });
    const codes = async (file: string): Promise<number[]> => {
      const all: number[] = [];
      for (const severity of ['error', 'warning', 'info'])
        all.push((await laybook(folder, 'check', file, '--fail-on', severity)).code);
      return all;
    };
    expect(await codes('clean.layup')).toEqual([0, 0, 0]);
    expect(await codes('note.layup')).toEqual([0, 0, 1]);
    expect(await codes(path.join(sample, 'first_try.layup'))).toEqual([1, 1, 1]);
  });

  it('are 2 for what is not there, is no recipe, or is called wrongly', async () => {
    const folder = made({ 'a.txt': 'x', 'empty/.keep': '' });
    symlinkSync('round.layup', path.join(folder, 'round.layup'));
    for (const args of [
      ['check', 'nowhere'],
      ['check', 'round.layup'],
      ['check', 'a.txt'],
      ['check', 'empty'],
      ['check', '--format', 'xml'],
      ['chekc'],
      ['check', '--fail-on', 'never'],
      [],
    ]) {
      const { code, err, out } = await laybook(folder, ...args);
      expect([args, code]).toEqual([args, 2]);
      expect(err).not.toBe('');
      expect(out).toBe('');
      expect(err).not.toContain('    at ');
    }
  });

  it.runIf(process.platform !== 'win32' && process.getuid?.() !== 0)(
    'are 2 for a file that may not be read',
    async () => {
      const folder = made({ 'a.layup': fabric('roll 1 m by 1 m'), 'b.layup': 'x' });
      chmodSync(path.join(folder, 'b.layup'), 0);
      const { code, err } = await laybook(folder, 'check');
      expect(code).toBe(2);
      expect(err).toContain('b.layup may not be read');
    },
  );

  it('are 0 for help and version', async () => {
    const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
    expect(await laybook(root, '--version')).toEqual({ code: 0, out: `${version}\n`, err: '' });
    const help = await laybook(root, 'check', '--help');
    expect(help.code).toBe(0);
    expect(help.out).toContain('Names are looked up');
    expect(Math.max(...help.out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });
});
