import { SaxesParser, type SaxesTagNS } from 'saxes';
import { text } from '../../figure/figure.ts';
import type { DrawingProblem, TextPlace } from '../drawn.ts';
import { limits } from '../limits.ts';

/** An element of an SVG file with what a reader of shapes asks of it. */
export interface Element {
  readonly name: string;
  /** by local name; `label` and `groupmode` come from the namespace of drawing programs, `href` from any */
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  readonly at: TextPlace;
}

export interface Elements {
  readonly root?: Element;
  readonly byId: ReadonlyMap<string, Element>;
  /** the style sheets within the file, one after the other */
  readonly styles: string;
  readonly problems: readonly DrawingProblem[];
}

const svg = 'http://www.w3.org/2000/svg';

/**
 * The tree of an SVG file. The text is read once from front to back without entities of its own: a DOCTYPE, which is where such
 * are defined, is refused. Whatever is malformed ends the reading with its place.
 */
export function readElements(source: string): Elements {
  const parser = new SaxesParser({ xmlns: true, position: true });
  const byId = new Map<string, Element>();
  const open: Element[] = [];
  let root: Element | undefined;
  let count = 0;
  let problem: DrawingProblem | undefined;
  const here = (): TextPlace => ({ line: parser.line, column: parser.column + 1 });
  const stop = (message: DrawingProblem['message']): undefined => {
    problem ??= { kind: 'refused', message, at: here() };
  };
  parser.on('doctype', () => {
    stop(text('a drawing with a DOCTYPE is not read, because it may define words of its own; save it as plain SVG'));
  });
  parser.on('error', (error) => {
    stop(text('the file is not well-formed: {what}', { what: plain(error.message) }));
  });
  let start = here();
  parser.on('opentagstart', ({ name }) => {
    // The parser stands behind the character after the name.
    start = { line: parser.line, column: Math.max(1, parser.column - name.length - 1) };
  });
  parser.on('opentag', (tag: SaxesTagNS) => {
    if (problem !== undefined) return undefined;
    if (++count > limits.elements)
      return stop(text('the drawing has more than {most} elements', { most: limits.elements }));
    if (open.length >= limits.depth)
      return stop(text('the elements of the drawing lie more than {most} deep', { most: limits.depth }));
    const element = elementOf(tag, start);
    const id = element.attributes.id;
    if (id !== undefined && !byId.has(id)) byId.set(id, element);
    const parent = open.at(-1);
    if (parent === undefined) root ??= element;
    // What other programs keep in the file beside SVG is passed by.
    else if (element.name !== '') parent.children.push(element);
    open.push(element);
  });
  const styles: string[] = [];
  const style = (words: string) => {
    const within = open.at(-1);
    // one that holds for print alone hides nothing here
    if (within?.name === 'style' && /^\s*(?:$|all\b|screen\b)/i.test(within.attributes.media ?? '')) styles.push(words);
  };
  parser.on('text', style);
  parser.on('cdata', style);
  parser.on('closetag', () => {
    open.pop();
  });
  for (let i = 0; i < source.length && problem === undefined; i += chunk) parser.write(source.slice(i, i + chunk));
  if (problem === undefined) parser.close();
  const problems = problem === undefined ? [] : [problem];
  return { ...(root === undefined ? {} : { root }), byId, styles: styles.join('\n'), problems };
}

/** The parser is asked between pieces of this many characters whether to go on. */
const chunk = 8_192;

function elementOf(tag: SaxesTagNS, at: TextPlace): Element {
  const attributes: Record<string, string> = {};
  for (const { local, prefix, uri, value } of Object.values(tag.attributes)) {
    const known = prefix === '' || local === 'href' || ((local === 'label' || local === 'groupmode') && uri !== svg);
    if (known && local !== '__proto__') attributes[local] = value;
  }
  return { name: tag.uri === svg || tag.uri === '' ? tag.local : '', attributes, children: [], at };
}

/** `3:12: unexpected close tag.` without the place, which is told beside. */
const plain = (message: string): string =>
  message
    .replace(/^\d+:\d+: /, '')
    .replace(/\.$/, '')
    .slice(0, 120);
