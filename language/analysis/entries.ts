import type { AstNode, LangiumDocument } from 'langium';
import type { EntryKey } from '../../calc/model/index.ts';
import type { Book as BookNode, Recipe as RecipeNode } from '../grammar/generated/ast.ts';
import { type EntryModel, type Lowered, lowerEntry } from '../lower/index.ts';
import { sameData } from '../../calc/figure/same.ts';

/** The entries of one document as they were last lowered. */
export interface DocumentEntries {
  readonly uri: string;
  readonly root: AstNode;
  readonly entries: readonly Lowered[];
  /** other recipes that entries are like, as they were resolved: a new tree there means lowering again */
  readonly bases: readonly { readonly node: RecipeNode; readonly seen: AstNode | undefined }[];
}

/** Counts entries lowered, for tests and the bench. */
export const lowerCounters = { lowered: 0, kept: 0 };

/**
 * Lowers the entries of a document. An entry that says the same as last time keeps its model object, so that the figures that
 * hang on it stay; its places are always new.
 */
export function entriesOf(document: LangiumDocument, origin: 'workspace' | 'stock', before: DocumentEntries | undefined): DocumentEntries {
  const root = document.parseResult.value as BookNode;
  const uri = document.uri.toString();
  if (before !== undefined && before.root === root && before.bases.every(({ node, seen }) => node.base?.ref === seen)) return before;
  const earlier = new Map(before?.entries.map((entry) => [entry.entry, entry.model]));
  const bases: { node: RecipeNode; seen: AstNode | undefined }[] = [];
  const entries = root.entries.map((node, index) => {
    lowerCounters.lowered++;
    if (node.$type === 'Recipe' && (node.base !== undefined || node.items.some((item) => item.$type === 'Process' && item.base !== undefined))) {
      bases.push({ node, seen: node.base?.ref });
    }
    const lowered = lowerEntry(node, origin, index);
    return { ...lowered, model: kept(lowered.entry, lowered.model, earlier) };
  });
  return { uri, root, entries, bases };
}

function kept(key: EntryKey, model: EntryModel, earlier: ReadonlyMap<EntryKey, EntryModel>): EntryModel {
  const last = earlier.get(key);
  if (last === undefined || last.kind !== model.kind) return model;
  if (model.kind === 'recipe' && last.kind === 'recipe') {
    const recipes = model.recipes.map((recipe) => {
      const same = last.recipes.find((r) => r.size === recipe.size);
      return same !== undefined && sameData(same, recipe) ? same : recipe;
    });
    if (recipes.length !== last.recipes.length || recipes.some((recipe, index) => recipe !== last.recipes[index])) return { kind: 'recipe', recipes };
  } else if (!sameData(last, model)) return model;
  lowerCounters.kept++;
  return last;
}
