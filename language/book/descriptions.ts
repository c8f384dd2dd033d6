import {
  type AstNode,
  type AstNodeDescription,
  type AstNodeLocator,
  AstUtils,
  CstUtils,
  type DocumentSegment,
  GrammarUtils,
} from 'langium';

const made = new WeakMap<AstNode, AstNodeDescription>();

/** The description of a node, made once; what is dear (its path, its place in the text) only when asked for. */
export function describe(node: AstNode, name: string, locator: AstNodeLocator): AstNodeDescription {
  const description = made.get(node) ?? new NodeDescription(node, name, locator);
  made.set(node, description);
  return description;
}

class NodeDescription implements AstNodeDescription {
  readonly node: AstNode;
  readonly name: string;
  readonly type: string;
  readonly documentUri: AstNodeDescription['documentUri'];
  readonly #locator: AstNodeLocator;

  constructor(node: AstNode, name: string, locator: AstNodeLocator) {
    this.node = node;
    this.name = name;
    this.type = node.$type;
    this.documentUri = AstUtils.getDocument(node).uri;
    this.#locator = locator;
  }

  get path(): string {
    return this.#locator.getAstNodePath(this.node);
  }

  get nameSegment(): DocumentSegment | undefined {
    return CstUtils.toDocumentSegment(
      GrammarUtils.findNodeForProperty(this.node.$cstNode, 'name') ?? this.node.$cstNode,
    );
  }

  get selectionSegment(): DocumentSegment | undefined {
    return CstUtils.toDocumentSegment(this.node.$cstNode);
  }
}
