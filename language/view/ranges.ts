import { type AstNode, type CstNode, CstUtils, isCompositeCstNode, isLeafCstNode, type LeafCstNode } from 'langium';

/** Lines and characters, both counted from zero. */
export type Range = CstNode['range'];

/** What a node says, without the line ends and comments behind it: a line end is part of each statement in the grammar. */
export function nodeRange(node: AstNode): Range | undefined {
  const cst = node.$cstNode;
  if (cst === undefined) return undefined;
  return { start: cst.range.start, end: (lastWord(cst) ?? cst).range.end };
}

/** The text of a node, without the line ends and comments behind it. */
export function nodeText(node: AstNode): string {
  const cst = node.$cstNode;
  return cst === undefined ? '' : cst.root.fullText.slice(cst.offset, (lastWord(cst) ?? cst).end);
}

/** What a statement says before its first comma or its block, on one line: `release semi_permanent`. */
export function headText(node: AstNode): string {
  if (node.$cstNode === undefined) return '';
  const words: string[] = [];
  let end = -1;
  let brackets = 0;
  for (const leaf of CstUtils.flattenCst(node.$cstNode)) {
    if (leaf.hidden) continue;
    if (leaf.text === '{' || leaf.tokenType.name === 'NL' || (leaf.text === ',' && brackets === 0)) break;
    if (leaf.text === '(') brackets++;
    else if (leaf.text === ')') brackets--;
    if (leaf.offset !== end && words.length > 0) words.push(' ');
    words.push(leaf.text);
    end = leaf.end;
  }
  return words.join('');
}

function lastWord(cst: CstNode): LeafCstNode | undefined {
  if (isLeafCstNode(cst)) return cst.hidden || cst.tokenType.name === 'NL' ? undefined : cst;
  if (!isCompositeCstNode(cst)) return undefined;
  for (let i = cst.content.length - 1; i >= 0; i--) {
    const found = lastWord(cst.content[i] as CstNode);
    if (found !== undefined) return found;
  }
  return undefined;
}
