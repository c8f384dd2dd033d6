import {
  type AstNode,
  AstUtils,
  type CstNode,
  CstUtils,
  DocumentState,
  GrammarAST,
  type LangiumDocument,
  type LeafCstNode,
  type Reference,
} from 'langium';

const features = new WeakMap<object, string | undefined>();
const rules = new WeakMap<object, string | undefined>();

/** The property of its node that a word belongs to. */
export function featureOf(leaf: LeafCstNode): string | undefined {
  for (let cst: CstNode | undefined = leaf; cst !== undefined && cst.astNode === leaf.astNode; cst = cst.container) {
    const source = cst.grammarSource;
    if (source === undefined) continue;
    if (!features.has(source))
      features.set(source, AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature);
    const feature = features.get(source);
    if (feature !== undefined) return feature;
  }
  return undefined;
}

/** The grammar rule that a word stands in directly: `Quantity`, `Unit`, `Ref` ... */
export function ruleOf(leaf: LeafCstNode): string | undefined {
  const source = leaf.grammarSource;
  if (source === undefined) return undefined;
  if (!rules.has(source)) rules.set(source, AstUtils.getContainerOfType(source, GrammarAST.isParserRule)?.name);
  return rules.get(source);
}

/** What a reference names; nothing while names are not known yet. */
export function targetOf(node: AstNode, reference: Reference): AstNode | undefined {
  return AstUtils.getDocument(node).state < DocumentState.ComputedScopes ? undefined : reference.ref;
}

/** The word or sign at an offset: the one that is touched from the right before the one touched from the left. */
export function leafAt(document: LangiumDocument, offset: number): LeafCstNode | undefined {
  const root = document.parseResult.value.$cstNode;
  if (root === undefined) return undefined;
  const isWord = (leaf: LeafCstNode | undefined): leaf is LeafCstNode =>
    leaf !== undefined && !leaf.hidden && leaf.length > 0 && leaf.tokenType.name !== 'NL';
  const leaf = CstUtils.findLeafNodeAtOffset(root, offset);
  if (isWord(leaf)) return leaf;
  const before = offset > 0 ? CstUtils.findLeafNodeAtOffset(root, offset - 1) : undefined;
  return isWord(before) && before.end === offset ? before : undefined;
}
