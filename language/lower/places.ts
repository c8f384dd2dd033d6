import { type AstNode, type CstNode, GrammarUtils } from 'langium';

/** Offsets into the text of the document, `end` exclusive. */
export interface Span {
  readonly offset: number;
  readonly end: number;
}

/** Path in the model -> where it stands in the text. */
export type Places = ReadonlyMap<string, Span>;

const space = /\s/;

/**
 * A span that is looked for when somebody asks: most places of an entry are never shown, and the search through the tokens of a
 * line costs more than all else that lowering does. Its members are read, never spread.
 */
class SpanOnDemand implements Span {
  private readonly cst: CstNode;
  private readonly find: (cst: CstNode) => Span;
  private found: Span | undefined;

  constructor(cst: CstNode, find: (cst: CstNode) => Span) {
    this.cst = cst;
    this.find = find;
  }

  get offset(): number {
    this.found ??= this.find(this.cst);
    return this.found.offset;
  }

  get end(): number {
    this.found ??= this.find(this.cst);
    return this.found.end;
  }
}

/** The text of a node without the line ends that close its statement. */
export function nodeSpan(node: AstNode | undefined): Span | undefined {
  const cst = node?.$cstNode;
  return cst === undefined ? undefined : new SpanOnDemand(cst, trimmed);
}

export function trimmed(cst: CstNode): Span {
  const text = cst.root.fullText;
  let end = Math.min(cst.end, text.length);
  while (end > cst.offset && space.test(text[end - 1] as string)) end--;
  return { offset: cst.offset, end };
}

/** A statement with a block stands for its head: the text before the brace; a line comment behind it is left out. */
export function headSpan(node: AstNode): Span | undefined {
  const cst = node.$cstNode;
  return cst === undefined ? undefined : new SpanOnDemand(cst, headOf);
}

function headOf(cst: CstNode): Span {
  const whole = trimmed(cst);
  const text = cst.root.fullText;
  const brace = text.slice(whole.offset, whole.end).search(/[{\r\n]/);
  if (brace <= 0) return whole;
  let end = whole.offset + brace;
  while (end > whole.offset && space.test(text[end - 1] as string)) end--;
  return { offset: whole.offset, end };
}

/** Where a property of a node stands, if the line says it. */
export function propertySpan(node: AstNode, property: string, index?: number): Span | undefined {
  const cst = node.$cstNode;
  if (cst === undefined || (node as unknown as Readonly<Record<string, unknown>>)[property] === undefined)
    return undefined;
  return new SpanOnDemand(cst, () => trimmed(GrammarUtils.findNodeForProperty(cst, property, index) ?? cst));
}

/** The range of a path, or of the nearest line around it. */
export function spanOf(places: Places, path: string): Span | undefined {
  for (let at = path; ; at = at.slice(0, at.lastIndexOf('.'))) {
    const found = places.get(at);
    if (found !== undefined || !at.includes('.')) return found ?? places.get('');
  }
}

/** A clause together with the comma that leads to it, and the line end before a comma that begins its line. */
export function withComma(span: Span, source: string): Span {
  const comma = backOverSpace(source, span.offset) - 1;
  return source[comma] === ',' ? { offset: backOverSpace(source, comma), end: span.end } : span;
}

function backOverSpace(source: string, from: number): number {
  let offset = from;
  while (offset > 0 && /\s/.test(source[offset - 1] ?? '')) offset--;
  return offset;
}
