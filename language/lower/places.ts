import { type AstNode, type CstNode, GrammarUtils } from 'langium';

/** Offsets into the text of the document, `end` exclusive. */
export interface Span {
  readonly offset: number;
  readonly end: number;
}

/** Path in the model -> where it stands in the text. */
export type Places = ReadonlyMap<string, Span>;

const space = /\s/;

/** The text of a node without the line ends that close its statement. */
export function nodeSpan(node: AstNode | undefined): Span | undefined {
  return node?.$cstNode === undefined ? undefined : trimmed(node.$cstNode);
}

export function trimmed(cst: CstNode): Span {
  const text = cst.root.fullText;
  let end = Math.min(cst.end, text.length);
  while (end > cst.offset && space.test(text[end - 1] as string)) end--;
  return { offset: cst.offset, end };
}

/** A statement with a block stands for its head: the text before the brace; a line comment behind it is left out. */
export function headSpan(node: AstNode): Span | undefined {
  const whole = nodeSpan(node);
  const text = node.$cstNode?.root.fullText;
  if (whole === undefined || text === undefined) return whole;
  const brace = text.slice(whole.offset, whole.end).search(/[{\r\n]/);
  if (brace <= 0) return whole;
  let end = whole.offset + brace;
  while (end > whole.offset && space.test(text[end - 1] as string)) end--;
  return { offset: whole.offset, end };
}

export function propertySpan(node: AstNode, property: string, index?: number): Span | undefined {
  const found = GrammarUtils.findNodeForProperty(node.$cstNode, property, index);
  return found === undefined ? undefined : trimmed(found);
}

/** The range of a path, or of the nearest line around it. */
export function spanOf(places: Places, path: string): Span | undefined {
  for (let at = path; ; at = at.slice(0, at.lastIndexOf('.'))) {
    const found = places.get(at);
    if (found !== undefined || !at.includes('.')) return found ?? places.get('');
  }
}
