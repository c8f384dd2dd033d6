import type { AstNode, LangiumDocument } from 'langium';
import { sameData } from '../../calc/figure/same.ts';
import type { EntryKey } from '../../calc/model/index.ts';
import { type Book as BookNode, type Entry, isRecipe, type Recipe as RecipeNode } from '../grammar/generated/ast.ts';
import { problemsOf } from '../grammar/lexer.ts';
import { longestLikeness } from '../grammar/limits.ts';
import { type EntryModel, type Lowered, lowerEntry } from '../lower/index.ts';
import { trimmed } from '../lower/places.ts';
import { shifted } from '../lower/shifted.ts';

/** The entries of one document as they were last lowered. */
export interface DocumentEntries {
  readonly uri: string;
  readonly root: AstNode;
  /** the text that they were lowered from, where it can be told which part of it is whose */
  readonly text: string | undefined;
  readonly entries: readonly Lowered[];
  /** what the entries said lately, the newest first: an undo finds its figures again */
  readonly lately: ReadonlyMap<EntryKey, readonly EntryModel[]>;
  /** recipes that say something of another, and the trees of those others: a new tree there means lowering again */
  readonly bases: readonly { readonly node: RecipeNode; readonly seen: readonly AstNode[] }[];
}

/** Versions of an entry that are remembered: a number that is deleted and typed again passes through a few. */
const mostVersions = 6;

/** Counts entries lowered, and those that were not since they said the same as before; for tests and the bench. */
export const lowerCounters = { lowered: 0, kept: 0 };

/**
 * Lowers the entries of a document. One whose text stands as it stood is not lowered again; one that says the same as last
 * time keeps its model object, so that the figures and findings that hang on it stay.
 */
export function entriesOf(
  document: LangiumDocument,
  origin: 'workspace' | 'stock',
  before: DocumentEntries | undefined,
): DocumentEntries {
  const { value, lexerReport } = document.parseResult;
  const root = value as BookNode;
  const uri = document.uri.toString();
  if (
    before !== undefined &&
    before.root === root &&
    before.bases.every(({ node, seen }) => isSame(basesOf(node), seen))
  )
    return before;
  // where braces were mended, what an entry holds may hang on the text around it
  const text = problemsOf(lexerReport).length === 0 ? document.textDocument.getText() : undefined;
  const unchanged = text === undefined ? undefined : byText(before);
  const bases: { node: RecipeNode; seen: readonly AstNode[] }[] = [];
  const entries = root.entries.map((node, index) => {
    const others = isRecipe(node) ? basesOf(node) : [];
    if (isRecipe(node) && saysSomethingOfAnother(node)) bases.push({ node, seen: others });
    const known =
      text === undefined || saysSomethingOfAnother(node)
        ? undefined
        : unchanged?.get(`${index} ${node.$type} ${textOf(node, text)}`);
    if (known !== undefined) {
      lowerCounters.kept++;
      return shifted(known, (node.$cstNode?.offset ?? 0) - known.source.offset);
    }
    lowerCounters.lowered++;
    const lowered = lowerEntry(node, origin, index);
    return { ...lowered, model: kept(lowered.model, before?.lately.get(lowered.entry) ?? []) };
  });
  return { uri, root, text, entries, lately: latelyOf(entries, before), bases };
}

function textOf(node: AstNode, text: string): string {
  if (node.$cstNode === undefined) return '';
  const { offset, end } = trimmed(node.$cstNode);
  return text.slice(offset, end);
}

/** Entries by their place among the others, their kind and their text. */
function byText(before: DocumentEntries | undefined): ReadonlyMap<string, Lowered> | undefined {
  if (before?.text === undefined) return undefined;
  const { text, entries, root } = before;
  const nodes = (root as BookNode).entries;
  return new Map(
    entries.map((lowered, index) => [
      `${index} ${nodes[index]?.$type} ${text.slice(lowered.source.offset, lowered.source.end)}`,
      lowered,
    ]),
  );
}

const saysSomethingOfAnother = (node: Entry): boolean =>
  isRecipe(node) &&
  (node.base !== undefined || node.items.some((item) => item.$type === 'Process' && item.base !== undefined));

/** The trees that a recipe takes lines from: those that it is like, the lenders of its processes, and those of these in turn. */
function basesOf(recipe: RecipeNode): readonly AstNode[] {
  const bases: RecipeNode[] = [];
  for (let at: RecipeNode | undefined = recipe, next = 0; at !== undefined; at = bases[next++]) {
    for (const base of [
      at.base?.ref,
      ...at.items.map((item) => (item.$type === 'Process' ? item.base?.ref : undefined)),
    ]) {
      if (!isRecipe(base) || base === recipe || bases.includes(base) || bases.length >= longestLikeness) continue;
      bases.push(base);
    }
  }
  return bases;
}

const isSame = (left: readonly AstNode[], right: readonly AstNode[]): boolean =>
  left.length === right.length && left.every((node, index) => node === right[index]);

/** The versions of each entry that is still there, this one first. */
function latelyOf(
  entries: readonly Lowered[],
  before: DocumentEntries | undefined,
): Map<EntryKey, readonly EntryModel[]> {
  const lately = new Map<EntryKey, readonly EntryModel[]>();
  for (const { entry, model } of entries) {
    const past = before?.lately.get(entry) ?? [];
    lately.set(
      entry,
      past[0] === model ? past : [model, ...past.filter((other) => other !== model)].slice(0, mostVersions),
    );
  }
  return lately;
}

/** The version among the past ones that says the same, else this one with what of it was said before. */
function kept(model: EntryModel, past: readonly EntryModel[]): EntryModel {
  if (model.kind !== 'recipe') return past.find((other) => sameData(other, model)) ?? model;
  const versions = past.flatMap((other) => (other.kind === 'recipe' ? [other] : []));
  const recipes = model.recipes.map(
    (recipe) =>
      versions
        .flatMap((version) => version.recipes)
        .find((known) => known.size === recipe.size && sameData(known, recipe)) ?? recipe,
  );
  const same = versions.find(
    (version) =>
      version.recipes.length === recipes.length && version.recipes.every((recipe, index) => recipe === recipes[index]),
  );
  return same ?? { kind: 'recipe', recipes };
}
