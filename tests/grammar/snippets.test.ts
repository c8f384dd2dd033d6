import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../language/grammar/generated/ast.ts';
import { lowerEntry } from '../../language/lower/index.ts';
import { wordAt } from '../../language/words/index.ts';
import { parsed, viewServices } from '../language/view/parsed.ts';
import type { Snippet } from '../setup/snippets.mjs';

const folder = join(import.meta.dirname, '..', '..', 'extension');
const read = (file: string): readonly [string, Snippet][] =>
  Object.entries(JSON.parse(readFileSync(join(folder, file), 'utf8')) as Record<string, Snippet>);
const snippets = read('snippets.json');
const german = read('generated/snippets.de.json');

/** The text as it stands when every field keeps its first value. */
function filled(snippet: Snippet): string {
  const values = new Map<string, string>();
  const text = snippet.body
    .join('\n')
    .replace(/\$\{CURRENT_YEAR\}-\$\{CURRENT_MONTH\}-\$\{CURRENT_DATE\}/g, '2026-05-14')
    .replace(/\$\{(\d+)\|([^,|]*)[^|]*\|\}/g, (_, index: string, first: string) => {
      values.set(index, first);
      return first;
    })
    .replace(/\$\{(\d+):([^}]*)\}/g, (_, index: string, first: string) => {
      values.set(index, first);
      return first;
    });
  return text.replace(/\$(\d+)/g, (_, index: string) => values.get(index) ?? '');
}

const services = viewServices();
/** A block of a recipe in a recipe, steps in a process; an entry as it stands. */
function placed(text: string): string {
  const first = text.split(' ')[0] ?? '';
  if (wordAt(first, 'book') !== undefined) return text;
  // a size changes and leaves out lines of the recipe around it
  const stack =
    first === 'size'
      ? 'stack from tool bench_tool {\nply outer biax_440 at 0 deg\npatch pad biax_440 at 45 deg\n}\n'
      : '';
  return wordAt(first, 'recipe') !== undefined
    ? `recipe own {\n${stack}${text}\n}`
    : `recipe own {\nprocess hand {\n${text}\n}\n}`;
}

describe.each([...snippets, ...german])('%s', (_, snippet) => {
  const text = filled(snippet);
  it('fills every field', () => expect(text).not.toMatch(/\$/));
  it('opens and closes its blocks', () => {
    const bare = text.replace(/"[^"\n]*"/g, '""');
    expect(bare.match(/\{/g)?.length ?? 0).toBe(bare.match(/\}/g)?.length ?? 0);
  });
  it('is written in the notation', () => {
    const { value, lexerErrors, parserErrors } = parsed(services, `${placed(text)}\n`).parseResult;
    expect([...lexerErrors, ...parserErrors].map((error) => error.message)).toEqual([]);
    expect(
      (value as Book).entries.flatMap((entry, index) =>
        lowerEntry(entry, 'workspace', index).problems.map((problem) => problem.message),
      ),
    ).toEqual([]);
  });
  it('ends where one goes on typing', () => expect(snippet.body.at(-1)).toMatch(/\$0$/));
});

it('every snippet has a prefix of its own', () => {
  const prefixes = snippets.map(([, snippet]) => snippet.prefix);
  expect(new Set(prefixes).size).toBe(prefixes.length);
});

it('in another language they are the same snippets', () => {
  expect(german.map(([, { prefix }]) => prefix)).toEqual(snippets.map(([, { prefix }]) => prefix));
});
