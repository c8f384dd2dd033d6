import type { Lowered } from '../lower/index.ts';
import type { DocumentEntries } from './entries.ts';
import type { Contents, Placed } from './shelf.ts';

/** A document that says something else than before; one side is missing where it came or went. */
export interface Change {
  readonly before: DocumentEntries | undefined;
  readonly now: DocumentEntries | undefined;
}

/** What the documents of the workspace hold, by name. */
export function contentsOf(documents: readonly DocumentEntries[]): Contents {
  const shops: Placed[] = [];
  const records: Placed[] = [];
  const named = {
    material: new Map<string, Placed[]>(),
    tool: new Map<string, Placed[]>(),
    recipe: new Map<string, Placed[]>(),
  };
  // by address, so that which of two duplicates counts does not depend on the order of reading
  for (const document of [...documents].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0))) {
    for (const lowered of document.entries) {
      const placed = { uri: document.uri, lowered };
      const { kind } = lowered.model;
      if (kind === 'shop') shops.push(placed);
      else if (kind === 'record') records.push(placed);
      else if ((kind === 'material' || kind === 'tool' || kind === 'recipe') && lowered.name !== '') {
        const list = named[kind].get(lowered.name);
        if (list === undefined) named[kind].set(lowered.name, [placed]);
        else list.push(placed);
      }
    }
  }
  return { shops, records, named, likenesses: likenessesAmong(named.recipe) };
}

function likenessesAmong(recipes: ReadonlyMap<string, readonly Placed[]>): () => ReadonlySet<string> {
  let found: ReadonlySet<string> | undefined;
  return () => {
    found ??= new Set([...recipes.values()].flat().flatMap(({ lowered }) => likeOf(lowered) ?? []));
    return found;
  };
}

const likeOf = ({ model }: Lowered): string | undefined =>
  model.kind === 'recipe' ? model.recipes[0]?.like : undefined;

/**
 * The contents after some changes, where those leave every entry its name and its place among the others, as most keys do;
 * undefined where all must be put together anew.
 */
export function contentsWith(contents: Contents | undefined, changes: readonly Change[]): Contents | undefined {
  if (contents === undefined || changes.length > few) return undefined;
  const instead = new Map<Lowered, Placed>();
  let alike = true;
  for (const { before, now } of changes) {
    if (before === undefined || now === undefined || before.entries.length !== now.entries.length) return undefined;
    for (const [index, lowered] of now.entries.entries()) {
      const last = before.entries[index]!;
      if (last.name !== lowered.name || last.model.kind !== lowered.model.kind) return undefined;
      alike &&= likeOf(last) === likeOf(lowered);
      instead.set(last, { uri: now.uri, lowered });
    }
  }
  const mended = (list: readonly Placed[]): readonly Placed[] =>
    list.map((placed) => instead.get(placed.lowered) ?? placed);
  const named = (kind: 'material' | 'tool' | 'recipe'): ReadonlyMap<string, readonly Placed[]> => {
    const changed = [...instead.values()].filter(({ lowered }) => lowered.model.kind === kind);
    if (changed.length === 0) return contents.named[kind];
    const all = new Map(contents.named[kind]);
    for (const { lowered } of changed)
      if (lowered.name !== '') all.set(lowered.name, mended(all.get(lowered.name) ?? []));
    return all;
  };
  const recipe = named('recipe');
  return {
    shops: mended(contents.shops),
    records: mended(contents.records),
    named: { material: named('material'), tool: named('tool'), recipe },
    likenesses: alike ? contents.likenesses : likenessesAmong(recipe),
  };
}

/** More changed documents than these are put together anew. */
const few = 20;
