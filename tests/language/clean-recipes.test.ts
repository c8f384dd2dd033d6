/**
 * No rule nags: on recipes as good builders write them nothing is found, but for what is listed here with the argument for it.
 * A finding that is new here is either a mistake of the recipe, and the recipe is mended, or of the rule.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');

interface Argued {
  readonly file: string;
  /** how the line begins that it stands on */
  readonly on: string;
  readonly rule: string;
  readonly because: string;
  /** the recipe itself says why it stays */
  readonly accepted?: true;
}

const sample: readonly Argued[] = [
  {
    file: 'sled_deck.layup',
    on: 'bag film_50',
    rule: 'bag/few-pleats',
    because: 'a flat tool: the recipe accepts it in words',
    accepted: true,
  },
  ...['expect sag under rider', 'expect margin under rider', 'expect fill'].map((on) => ({
    file: 'sled_deck.layup',
    on,
    rule: 'expect/cannot-tell',
    because: 'the figure is not there yet',
  })),
  ...['expect sag under step_on', 'expect margin under step_on', 'expect fill'].map((on) => ({
    file: 'hatch_lid.layup',
    on,
    rule: 'expect/cannot-tell',
    because: 'the figure is not there yet',
  })),
];

const recipes: readonly Argued[] = [
  {
    file: 'hatch-lid.layup',
    on: 'insert latch',
    rule: 'insert/taper',
    because: 'a hard insert with square ends under one skin; a note, as many builders leave a small one so',
  },
  {
    file: 'hatch-lid.layup',
    on: 'lay outer to inner',
    rule: 'resin/small-batch-scale',
    because: '13 g of bond paste take 0.26 g of catalyst: the builder doses it with a syringe',
    accepted: true,
  },
  ...['expect sag under step_on', 'expect margin under step_on', 'expect fill'].map((on) => ({
    file: 'hatch-lid.layup',
    on,
    rule: 'expect/cannot-tell',
    because: 'the figure is not there yet',
  })),
];

interface Found {
  readonly rule: string;
  readonly severity: string;
  readonly file: string;
  readonly accepted: unknown;
  readonly range: { readonly start: { readonly line: number } };
}

/** `hatch-lid.layup insert/taper: insert latch`, each as often as it is found. */
async function found(
  folder: string,
  leaveOut: readonly string[],
  argued: readonly Argued[],
): Promise<{ told: string[]; expected: string[]; findings: readonly Found[] }> {
  const { out } = await laybook(root, 'check', folder, '--format', 'json');
  const findings = (JSON.parse(out).findings as readonly Found[]).filter(
    ({ file }) => !leaveOut.some((name) => file.endsWith(name)),
  );
  const told = findings.map(({ file, rule, range, accepted }) => {
    const line = (readFileSync(path.join(root, file), 'utf8').split('\n')[range.start.line] ?? '').trim();
    const on = argued.find((each) => each.rule === rule && line.startsWith(each.on))?.on ?? line;
    return `${path.relative(path.join(root, folder), path.join(root, file))} ${rule}: ${on}${accepted === null ? '' : ' (accepted)'}`;
  });
  const expected = argued.map(
    ({ file, rule, on, accepted }) => `${file} ${rule}: ${on}${accepted === undefined ? '' : ' (accepted)'}`,
  );
  return { told: told.sort(), expected: expected.sort(), findings };
}

describe('recipes of good builders', () => {
  it('the sample workshop: nothing but what is argued for', async () => {
    const { told, expected } = await found('extension/sample', ['first_try.layup'], sample);
    expect(told).toEqual(expected);
  });

  it('recipes that were written before there was a rule: nothing but what is argued for', async () => {
    const { told, expected, findings } = await found('tests/recipes', [], recipes);
    expect(told).toEqual(expected);
    expect(findings.filter(({ severity, accepted }) => severity !== 'info' && accepted === null)).toEqual([]);
  });

  it('are of every process, and there are enough of them to say something', () => {
    const text = ['extension/sample', 'tests/recipes']
      .flatMap((folder) =>
        readdirSync(path.join(root, folder))
          .filter((name) => name.endsWith('.layup') && name !== 'first_try.layup')
          .map((name) => readFileSync(path.join(root, folder, name), 'utf8')),
      )
      .join('\n');
    for (const kind of ['hand', 'bagged', 'infusion', 'prepreg'])
      expect(text).toMatch(new RegExp(`^ {2}process ${kind}\\b`, 'm'));
    expect(text.match(/^recipe /gm)?.length).toBeGreaterThanOrEqual(10);
  });
});

describe('three years of records', () => {
  const folder = path.join(root, 'extension/sample/records');
  const records = readdirSync(folder)
    .sort()
    .flatMap((name) =>
      readFileSync(path.join(folder, name), 'utf8')
        .split(/^(?=record )/m)
        .slice(1),
    );
  const dateOf = (record: string): string => /\d{4}-\d{2}-\d{2}/.exec(record)?.[0] ?? '';
  const read = (record: string, pattern: RegExp): number => Number(pattern.exec(record)?.[1]);

  it('tell a history: about forty builds in order, numbered, revisions 1 to 4', () => {
    expect(records.length).toBeGreaterThanOrEqual(38);
    const dates = records.map(dateOf);
    expect(dates).toEqual([...dates].sort());
    expect([...new Set(dates.map((date) => date.slice(0, 4)))]).toEqual(['2024', '2025', '2026']);
    expect(records.map((record) => read(record, /"no\. (\d+)"/))).toEqual(records.map((_, i) => i + 1));
    const revisions = records.map((record) => read(record, /revision (\d)/));
    expect(revisions).toEqual([...revisions].sort());
    expect(new Set(revisions).size).toBe(4);
    expect(records.filter((record) => record.includes('differs')).length).toBe(2);
  });

  it('use no resin past its date', () => {
    for (const record of records) expect((/expires (\S+)/.exec(record)?.[1] ?? '') > dateOf(record)).toBe(true);
  });

  // viscosity of an infusion epoxy halves over about 15 K: common practice
  it('fill slower when it is cold, and pull worse as the pump ages', () => {
    const whole = records.filter((record) => !record.includes('sled_deck short'));
    const fillAt = (from: number, to: number): number => {
      const fills = whole
        .filter((record) => read(record, /at ([\d.]+) degC/) >= from && read(record, /at ([\d.]+) degC/) < to)
        .map((record) => read(record, /fill ([\d.]+)/));
      return fills.reduce((sum, each) => sum + each, 0) / fills.length;
    };
    expect(fillAt(18, 20) / fillAt(23, 26)).toBeGreaterThan(1.15);
    expect(fillAt(18, 20) / fillAt(23, 26)).toBeLessThan(1.45);
    const vacuum = (number: number): number => read(records[number - 1] ?? '', /vacuum (\d+) mbar/);
    expect(vacuum(12) - vacuum(1)).toBeGreaterThan(10);
    expect(vacuum(25)).toBeLessThan(vacuum(24) - 10);
  });
});
