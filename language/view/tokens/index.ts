import { type AstNode, CstUtils, isReference, type LeafCstNode } from 'langium';
import { parseUnit } from '../../../calc/quantity/index.ts';
import type { Book } from '../../grammar/generated/ast.ts';
import { choiceAt } from '../choices.ts';
import { featureOf, ruleOf, targetOf } from '../leaves.ts';
import {
  factHeads,
  facts,
  type HighlightModifier,
  type HighlightType,
  heads,
  named,
  references,
  verbs,
} from './sorts.ts';

/** A word or sign of the text and how it is shown; lines and characters from zero. */
export interface Highlight {
  readonly line: number;
  readonly character: number;
  readonly length: number;
  readonly type: HighlightType;
  readonly modifiers: readonly HighlightModifier[];
}

/** What the words mean, as far as the colours need it. */
export interface HighlightBook {
  /** a step that the notation knows */
  readonly isVerb: (word: string) => boolean;
  /** an entry of the stock library */
  readonly isStock: (entry: AstNode) => boolean;
}

interface Shown {
  readonly type: HighlightType;
  readonly modifiers?: readonly HighlightModifier[];
}

/**
 * How the words of a file are shown, by what they are in the syntax tree: a layer called `tape` is a name, the step `tape` is
 * none. What only the form of the text tells (texts, comments, connectives) is left to the grammar of the editor.
 */
export function highlightsOf(root: Book, book: HighlightBook): Highlight[] {
  const highlights: Highlight[] = [];
  if (root.$cstNode === undefined) return highlights;
  for (const leaf of CstUtils.flattenCst(root.$cstNode)) {
    if (leaf.hidden || leaf.length === 0 || leaf.tokenType.name === 'NL') continue;
    const shown = showLeaf(leaf, book);
    if (shown === undefined) continue;
    const { line, character } = leaf.range.start;
    highlights.push({ line, character, length: leaf.length, type: shown.type, modifiers: shown.modifiers ?? [] });
  }
  return highlights;
}

function showLeaf(leaf: LeafCstNode, book: HighlightBook): Shown | undefined {
  const node = leaf.astNode;
  if (node.$cstNode?.offset === leaf.offset) {
    if (heads.has(node.$type)) return { type: 'keyword' };
    if (factHeads.has(node.$type)) return { type: 'property' };
  }
  const rule = ruleOf(leaf);
  if (rule === 'Quantity' || rule === 'Ratio') return isDigit(leaf.text) ? { type: 'number' } : undefined;
  if (rule === 'Unit') return 'unknown' in parseUnit(leaf.text) ? undefined : { type: 'number' };
  const feature = featureOf(leaf);
  if (feature === undefined) return undefined;
  const place = `${node.$type}.${feature}`;
  if (feature === 'name')
    return named[node.$type] && { type: named[node.$type] as HighlightType, modifiers: ['declaration'] };
  if (facts.has(place)) return { type: 'property' };
  if (verbs.has(place)) return book.isVerb(leaf.text) ? { type: 'function' } : undefined;
  if (place === 'Version.number') return { type: 'number' };
  if (choiceAt(node, leaf.text) !== undefined) return undefined;
  return place === 'WordArg.word' || place in references
    ? showReference(node, feature, references[place], book)
    : undefined;
}

function showReference(
  node: AstNode,
  feature: string,
  otherwise: HighlightType | undefined,
  book: HighlightBook,
): Shown | undefined {
  const reference = (node as unknown as Record<string, unknown>)[feature];
  const target = isReference(reference) ? targetOf(node, reference) : undefined;
  const type = (target && named[target.$type]) ?? otherwise;
  if (type === undefined) return undefined;
  return { type, ...(target !== undefined && book.isStock(target) ? { modifiers: ['defaultLibrary'] as const } : {}) };
}

const isDigit = (text: string): boolean => /^\d/.test(text);
