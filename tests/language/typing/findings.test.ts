/** The sled deck is typed from nothing: what is found after each key is a list that was read, and nothing of it flickers. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
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
  await server.open(typed, '\n');
  // However long this machine takes for a key, who types does not rest.
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  for (const { text, cursor } of keystrokes(textOf('sled_deck.layup'))) {
    await server.change(typed, { text });
    await server.takenIn();
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
afterAll(() => {
  vi.useRealTimers();
  server.stop();
});

/** What is told of a line that is half typed: that it is not finished. */
const ofSyntax = new Set(['line/not-understood', 'line/missing-brace', 'line/surplus-brace']);
const isSyntax = (found: Found, line: number): boolean => found.line === line && ofSyntax.has(found.rule);

describe('while the sled deck is typed', () => {
  it('nothing flickers: no finding of a line that is not touched goes and comes back', () => {
    expect(flickers(all)).toEqual([]);
  });

  it('the line that is typed is told of what cannot be read in it, and of nothing else', () => {
    const half = all.filter(({ line, found }) => found.some((each) => isSyntax(each, line)));
    expect(half.length).toBeGreaterThan(300);
    const other = all.flatMap(({ line, typed: words, found }) =>
      found
        .filter((each) => each.line === line && !ofSyntax.has(each.rule))
        .map(({ rule, message }) => `${words.trim()}: ${rule}: ${message}`),
    );
    expect(other).toEqual([]);
  });

  it('a word that is typed brings nothing new: it is about to be another', () => {
    const told = ({ found }: After): string[] => found.map(({ rule, message, line }) => `${line} ${rule}: ${message}`);
    const news = all.flatMap((after, i) =>
      /\w$/.test(after.typed)
        ? told(after).filter((each) => !told(all[i - 1] ?? { ...after, found: [] }).includes(each))
        : [],
    );
    expect(news).toEqual([]);
  });

  it('no line is told of anything while another is typed', () => {
    const elsewhere = ({ found, line }: After): string[] =>
      found.filter((each) => each.line !== line).map(({ rule, message, line: at }) => `${at} ${rule}: ${message}`);
    for (const [i, after] of all.entries()) {
      const before = all[i - 1];
      if (before?.line === after.line) expect(elsewhere(after), after.typed).toEqual(elsewhere(before));
    }
  });

  it('what else is found is the list that was read', () => {
    const list = listOf(all, isSyntax);
    if (process.env.UPDATE) writeFileSync(kept, list);
    expect(list).toBe(readFileSync(kept, 'utf8'));
  });
});
