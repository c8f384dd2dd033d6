import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface Snippet { readonly prefix: string; readonly description: string; readonly body: readonly string[] }

const file = join(import.meta.dirname, '..', '..', 'extension', 'snippets.json');
const snippets = Object.entries(JSON.parse(readFileSync(file, 'utf8')) as Record<string, Snippet>);

/** The text as it stands when every field keeps its first value. */
function filled(snippet: Snippet): string {
  const values = new Map<string, string>();
  const text = snippet.body.join('\n')
    .replace(/\$\{CURRENT_YEAR\}-\$\{CURRENT_MONTH\}-\$\{CURRENT_DATE\}/g, '2026-05-14')
    .replace(/\$\{(\d+)\|([^,|]*)[^|]*\|\}/g, (_, index: string, first: string) => { values.set(index, first); return first; })
    .replace(/\$\{(\d+):([^}]*)\}/g, (_, index: string, first: string) => { values.set(index, first); return first; });
  return text.replace(/\$(\d+)/g, (_, index: string) => values.get(index) ?? '');
}

describe.each(snippets)('%s', (_, snippet) => {
  const text = filled(snippet);
  it('fills every field', () => expect(text).not.toMatch(/\$/));
  it('opens and closes its blocks', () => {
    const bare = text.replace(/"[^"\n]*"/g, '""');
    expect(bare.match(/\{/g)?.length ?? 0).toBe(bare.match(/\}/g)?.length ?? 0);
  });
  it('ends where one goes on typing', () => expect(snippet.body.at(-1)).toMatch(/\$0$/));
});

it('every snippet has a prefix of its own', () => {
  const prefixes = snippets.map(([, snippet]) => snippet.prefix);
  expect(new Set(prefixes).size).toBe(prefixes.length);
});
