import { type AstNode, CstUtils, isReference, type LangiumDocument, type LeafCstNode } from 'langium';
import { parseUnit } from '../../../calc/quantity/index.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { type Place, type Word, wordAt } from '../../words/index.ts';
import { choiceAt } from '../choices.ts';
import { featureOf, leafAt, ruleOf, targetOf } from '../leaves.ts';
import { references } from '../tokens/sorts.ts';
import { choiceOf, clausePlace, headOf } from '../words.ts';
import type { HoverText } from './hover.ts';
import { wordCard } from './markdown.ts';
import { takesText } from './takes.ts';

/** What a word of the notation means where it stands. Names that happen to be spelled like one are none. */
export function wordHover(
  document: LangiumDocument,
  offset: number,
  hazards?: 'all that may be' | 'none',
): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const word = leaf && wordOf(leaf);
  if (leaf === undefined || word === undefined) return undefined;
  const takes = takesText(word);
  const head = `**${word.word}**${takes === '' ? '' : ` ${takes}`}`;
  return { markdown: `${head}\n\n${wordCard(word, hazards)}`, start: leaf.offset, end: leaf.end };
}

const clauses: ReadonlySet<string> = new Set([
  'WrapClause',
  'GrooveClause',
  'OverClause',
  'ShapeClause',
  'NoteClause',
  'AcceptClause',
  'SourceClause',
  'Phrase',
  'AmountClause',
  'PartClause',
  'NoteRemark',
  'AcceptRemark',
  'SourceRemark',
]);
const shapes: ReadonlySet<string> = new Set(['Box', 'Circle', 'Polygon', 'SvgPath', 'FileShape']);

/** The row of the table for a word of the text; undefined for names, numbers and units. */
export function wordOf(leaf: LeafCstNode): Word | undefined {
  const { text, astNode } = leaf;
  if (!/^\p{L}/u.test(text) || isName(leaf)) return undefined;
  const line = lineOf(astNode);
  const place = line && placeOf(line);
  if (line === undefined || place === undefined) return undefined;
  const images = wordsOf(line, 2);
  const head = headOf(place, images);
  if (leaf.offset === line.$cstNode?.offset) return head;
  if (
    head !== undefined &&
    head.word === `${images[0]} ${images[1]}` &&
    leaf.offset < (line.$cstNode?.offset ?? 0) + head.word.length + 1
  )
    return head;
  const clause = clauseOf(astNode);
  const at = clausePlace(place, images[0] ?? '');
  const own = clause === undefined ? '' : (wordsOf(clause, 1)[0] ?? '');
  if (shapes.has(astNode.$type)) return choiceOf('outline', text);
  if (astNode.$type === ast.Test.$type && featureOf(leaf) === 'what') return wordAt(text, 'value of expect');
  if (clause !== undefined && leaf.offset === clause.$cstNode?.offset) return wordAt(text, at);
  const choice = choiceAt(astNode, text) ?? choiceOf(own, text) ?? choiceOf(head?.word ?? '', text);
  return (
    choice ??
    (clause === undefined && at === 'clause of fact' ? undefined : wordAt(text, at)) ??
    wordAt(text, 'anywhere')
  );
}

/** Names: declared, referred to, or found among the names of the book; units are none of the words. */
function isName(leaf: LeafCstNode): boolean {
  const { astNode, text } = leaf;
  if (ruleOf(leaf) === 'Unit') return !('unknown' in parseUnit(text));
  const feature = featureOf(leaf);
  if (feature === undefined) return false;
  if (feature === 'name' || `${astNode.$type}.${feature}` in references) return true;
  if (astNode.$type !== ast.WordArg.$type || choiceAt(astNode, text) !== undefined) return false;
  const reference = (astNode as ast.WordArg).word;
  return isReference(reference) && targetOf(astNode, reference) !== undefined;
}

function wordsOf(node: AstNode, most: number): string[] {
  const found: string[] = [];
  if (node.$cstNode === undefined) return found;
  for (const leaf of CstUtils.flattenCst(node.$cstNode)) {
    if (leaf.hidden || leaf.length === 0) continue;
    found.push(leaf.text);
    if (found.length === most) break;
  }
  return found;
}

function clauseOf(node: AstNode): AstNode | undefined {
  for (let one: AstNode | undefined = node; one !== undefined; one = one.$container)
    if (clauses.has(one.$type)) return one;
  return undefined;
}

/** What holds lines, and the place that its lines stand in. */
const holders: Readonly<Record<string, (node: AstNode) => Place>> = {
  [ast.Book.$type]: () => 'book',
  [ast.Shop.$type]: () => 'shop',
  [ast.Material.$type]: (node) => (node as ast.Material).kind,
  [ast.Tool.$type]: () => 'tool',
  [ast.Recipe.$type]: () => 'recipe',
  [ast.BuildRecord.$type]: () => 'record',
  [ast.PartBlock.$type]: () => 'part',
  [ast.Stack.$type]: () => 'stack',
  [ast.Repeat.$type]: () => 'stack',
  [ast.Process.$type]: () => 'process',
  [ast.Step.$type]: (node) => blockPlace((node as ast.Step).verb),
  [ast.Load.$type]: () => 'load',
  [ast.Size.$type]: () => 'size',
};

const blockPlace = (verb: string): Place =>
  verb === 'kit' || verb === 'infuse' || verb === 'cure' || verb === 'postcure' ? verb : 'process';

/** Properties that hold lines; the clauses of a line stand in others. */
const lineLists: ReadonlySet<string> = new Set(['entries', 'items', 'layers', 'steps', 'version']);

/** The statement that a node belongs to. */
function lineOf(node: AstNode): AstNode | undefined {
  for (let one: AstNode = node; one.$container !== undefined; one = one.$container) {
    if (one.$container.$type in holders && lineLists.has(one.$containerProperty ?? '')) return one;
  }
  return undefined;
}

function placeOf(line: AstNode): Place | undefined {
  const holder = line.$container;
  return holder === undefined ? undefined : holders[holder.$type]?.(holder);
}
