/** Completion offers the word that is typed next within its first five entries at nine of ten word starts. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { verbs, words } from '../../../language/words/index.ts';
import {
  usualClauses,
  usualEntries,
  usualExpectations,
  usualLayers,
  usualSteps,
} from '../../../language/words/usual.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';
import { wordStarts } from './word-starts.ts';

const sample = path.resolve(import.meta.dirname, '../../../extension/sample');
const textOf = (name: string): string => readFileSync(path.join(sample, name), 'utf8');
const deck = textOf('sled_deck.layup');
const typed = 'deck_typed.layup';

let server: MemoryServer;
beforeAll(async () => {
  // The book as it is without the recipe: materials, tools, shop and the other recipes.
  const others = readdirSync(sample).filter((name) => name.endsWith('.layup') && name !== 'sled_deck.layup');
  server = await startMemoryServer(Object.fromEntries(others.map((name) => [name, textOf(name)])));
  await server.open(typed, '');
});
afterAll(() => server.stop());

/** Labels in the order of the list, as an editor shows it before a letter is typed. */
async function offered(text: string, cursor: number): Promise<string[]> {
  await server.change(typed, { text });
  const position = TextDocument.create(typed, 'layup', 1, text).positionAt(cursor);
  const params = { textDocument: { uri: server.uriOf(typed) }, position };
  const list = await server.client.sendRequest<CompletionList | CompletionItem[] | null>(
    'textDocument/completion',
    params,
  );
  const items = Array.isArray(list) ? list : (list?.items ?? []);
  return [...items]
    .sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1))
    .map(({ label }) => label);
}

it('of the sled deck, typed from nothing', async () => {
  const starts = wordStarts(deck);
  const missed: string[] = [];
  for (const { word, text, cursor } of starts) {
    const labels = (await offered(text, cursor)).slice(0, 5);
    const hit = labels.some((label) => label === word || label.startsWith(`${word} `));
    if (!hit)
      missed.push(
        `${text.slice(text.lastIndexOf('\n', cursor - 1) + 1, cursor)}[${word}]  not in: ${labels.join(' | ')}`,
      );
  }

  expect(starts.length).toBeGreaterThan(150);
  expect(1 - missed.length / starts.length, missed.join('\n')).toBeGreaterThanOrEqual(0.9);
}, 120_000);

it('what is offered first are words of the notation', () => {
  const known = new Set([...words, ...verbs].map(({ word }) => word));
  const usual = [usualEntries, usualSteps, usualLayers, usualExpectations, ...Object.values(usualClauses)].flat();
  expect(usual.filter((word) => !known.has(word))).toEqual([]);
});

it('offers a line of flow for a feed, though its own entry leaves what it is for to the stock library', async () => {
  const text = 'recipe r {\n  process infusion with epoxy_slow at 23 degC {\n    feed f1 \n  }\n}\n';
  expect((await offered(text, text.indexOf('f1 ') + 3)).slice(0, 5)).toContain('spiral_10');
});

it('a catalyst of the book behind the clause that doses it', async () => {
  const text = `recipe r {
  process hand with polyester_laminating at 20 degC {
    lay stack, catalyst `;
  expect(await offered(`${text}\n  }\n}\n`, text.length)).toContain('mekp_50');
});

it('behind `lot` of a record what its recipe is built of, in the order of its lines', async () => {
  const text = `${deck}\nrecord sled_deck 2026-05-14 {\n  lot `;
  const labels = await offered(`${text}\n}\n`, text.length);
  expect(labels.slice(0, 5)).toEqual(['triax_680', 'uni_c300', 'foam_80', 'birch_ply', 'biax_440']);
  expect(labels.indexOf('epoxy_slow')).toBeLessThan(15);
  // nothing is left out, nothing is offered twice
  expect(labels).toContain('carbon_twill_200');
  expect(new Set(labels).size).toBe(labels.length);
});
