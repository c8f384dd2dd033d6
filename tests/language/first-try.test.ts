/**
 * A beginner's first week, `extension/sample/first_try.layup`: every mistake is found where it stands, none twice, and nothing else is
 * said. `first-try.expected.json` lists rule and line; it is written by hand after reading each finding as a builder would.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const file = 'extension/sample/first_try.layup';

interface Found {
  readonly rule: string;
  readonly line: number;
}
const expected: readonly Found[] = JSON.parse(
  readFileSync(path.join(import.meta.dirname, 'first-try.expected.json'), 'utf8'),
);
const lines = readFileSync(path.join(root, file), 'utf8').split('\n');
const told = ({ rule, line }: Found): string => `${String(line).padStart(3)} ${rule}: ${lines[line - 1]?.trim()}`;

const { out } = await laybook(root, 'check', file, '--book', 'extension/sample', '--format', 'json');
const findings = (
  JSON.parse(out).findings as readonly {
    readonly rule: string;
    readonly severity: string;
    readonly range: { readonly start: { readonly line: number } };
  }[]
).map(({ rule, severity, range }) => ({ rule, severity, line: range.start.line + 1 }));

describe('the first try', () => {
  it('is told of each mistake, and of nothing else', () => {
    expect(findings.map(told).sort()).toEqual(expected.map(told).sort());
  });

  it('is told of no mistake twice', () => {
    const seen = findings.map(told);
    expect(seen.filter((each, i) => seen.indexOf(each) !== i)).toEqual([]);
  });

  it('holds at least thirty mistakes that cost parts or time, of many kinds', () => {
    const costly = findings.filter(({ severity }) => severity !== 'info');
    expect(costly.length).toBeGreaterThanOrEqual(50);
    expect(new Set(costly.map(({ rule }) => rule)).size).toBeGreaterThanOrEqual(45);
    expect(new Set(costly.map(({ rule }) => rule.split('/')[0])).size).toBeGreaterThanOrEqual(20);
  });

  it('reads well otherwise: every recipe of it can be reported', async () => {
    const names = lines.flatMap((line) => /^recipe (\w+)/.exec(line)?.[1] ?? []);
    expect(names.length).toBe(9);
    for (const name of names) expect((await laybook(root, 'report', name, 'extension/sample')).code).toBe(0);
  }, 60_000);
});
