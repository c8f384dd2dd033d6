/** The sled deck is typed from nothing: what is found after each key is a list that was read, and nothing of it flickers. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rules } from '../../../language/rules/generated/rules.ts';
import type { Rule } from '../../../language/rules/rule.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';
import { type After, type Found, flickers, listOf } from './judge.ts';
import { keystrokes } from './keystrokes.ts';

const sample = path.resolve(import.meta.dirname, '../../../extension/sample');
const textOf = (name: string): string => readFileSync(path.join(sample, name), 'utf8');
const typed = 'deck_typed.layup';
const kept = path.join(import.meta.dirname, 'findings.expected.txt');

let server: MemoryServer;
const all: After[] = [];
beforeAll(async () => {
  const others = readdirSync(sample).filter((name) => name.endsWith('.layup') && name !== 'sled_deck.layup');
  server = await startMemoryServer(Object.fromEntries(others.map((name) => [name, textOf(name)])));
  await server.open(typed, '');
  for (const { text, cursor } of keystrokes(textOf('sled_deck.layup'))) {
    await server.change(typed, { text });
    await server.settled();
    const before = text.slice(0, cursor);
    all.push({
      line: before.split('\n').length - 1,
      typed: before.slice(before.lastIndexOf('\n') + 1),
      found: (server.diagnostics.get(typed) ?? []).map(({ code, message, range }) => ({
        rule: String(code),
        message: String(message),
        line: range.start.line,
      })),
    });
  }
}, 300_000);
afterAll(() => server.stop());

/** What says that a line cannot be read, or speaks of what there is not: nothing else is told of a line that is half typed. */
const ofReading = new Set<string>([
  'name/unknown',
  ...(rules as readonly Rule[]).filter(({ on }) => on === 'reading').map(({ name }) => name),
]);
const isSyntax = (found: Found, line: number): boolean => found.line === line && ofReading.has(found.rule);

/** A metre on the way to a millimetre can be read: a finding elsewhere goes for one key. */
const ofMetres = /went at "[^\n]*\d m", came back at "[^\n]*\d mm"$/;

describe('while the sled deck is typed', () => {
  it('nothing flickers: no finding of a line that is not touched goes and comes back', () => {
    const found = flickers(all);
    expect(found.filter((each) => !ofMetres.test(each))).toEqual([]);
    expect(found.length).toBeLessThanOrEqual(1);
  });

  it('a line that is half typed is told of what cannot be read in it, and of nothing else', () => {
    const half = all.filter(({ line, found }) => found.some((each) => isSyntax(each, line)));
    expect(half.length).toBeGreaterThan(500);
    const other = half.flatMap(({ line, typed: words, found }) =>
      found
        .filter((each) => each.line === line && !ofReading.has(each.rule))
        .map(({ rule, message }) => `${words.trim()}: ${rule}: ${message}`),
    );
    expect(other).toEqual([]);
  });

  it('what else is found is the list that was read', () => {
    const list = listOf(all, isSyntax);
    if (process.env.UPDATE) writeFileSync(kept, list);
    expect(list).toBe(readFileSync(kept, 'utf8'));
  });
});
