import { AstUtils, type CstNode, type LangiumDocument } from 'langium';
import * as ast from '../../grammar/generated/ast.ts';
import { targetOf } from '../leaves.ts';
import { headText } from '../ranges.ts';

/** A place where a recipe types the name of a material. */
export interface TypedUse {
  readonly cst: CstNode;
  /** what the line begins with: `ply outer triax_680 at 0 deg` */
  readonly words: string;
}

/** Where the recipe whose entry is given types the name of a material. */
export function usesIn(entry: ast.Recipe, material: string): TypedUse[] {
  const uses: TypedUse[] = [];
  for (const node of AstUtils.streamAst(entry)) {
    for (const { reference } of AstUtils.streamReferences(node)) {
      if (reference.$refText !== material || reference.$refNode === undefined || !('ref' in reference)) continue;
      const target = targetOf(node, reference);
      if (!ast.isMaterial(target) || target.name !== material) continue;
      uses.push({ cst: reference.$refNode, words: headText(lineAround(node, entry)) });
    }
  }
  return uses.sort((a, b) => a.cst.offset - b.cst.offset);
}

/** The line of a block that a node stands in. */
function lineAround(node: ast.Recipe | Parameters<typeof AstUtils.streamReferences>[0], entry: ast.Recipe) {
  let line = node;
  while (line.$container !== undefined && line !== entry && !holdsLines(line.$container.$type)) line = line.$container;
  return line;
}

const blocks: ReadonlySet<string> = new Set(['Recipe', 'Part', 'Stack', 'Process', 'Block', 'Size', 'Repeat', 'Step']);
const holdsLines = (type: string): boolean => blocks.has(type);

/** The entry of a recipe in the tree of its document. */
export function entryOf(document: LangiumDocument, name: string): ast.Recipe | undefined {
  const { entries } = document.parseResult.value as ast.Book;
  return entries.filter(ast.isRecipe).find((entry) => entry.name === name);
}
