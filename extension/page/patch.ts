/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import type { VElement, VNode } from './node.ts';

const svg = 'http://www.w3.org/2000/svg';

/** Set by the reader, not by us: which parts are folded out. */
const readers: ReadonlySet<string> = new Set(['open']);

/** Brings the children of an element to what they should be. What stays the same is not touched: focus, selection and folds stay. */
export function patch(parent: Element, next: readonly VNode[]): void {
  const keyed = new Map<string, Element>();
  for (const child of parent.children) {
    const key = child.getAttribute('data-key');
    if (key !== null) keyed.set(key, child);
  }
  for (const [index, node] of next.entries()) {
    const there = parent.childNodes[index];
    if (typeof node === 'string') {
      patchText(parent, there, node);
      continue;
    }
    const key = node.attributes['data-key'];
    const known = key === undefined ? undefined : keyed.get(key);
    const usable = known ?? (there instanceof Element && there.getAttribute('data-key') === null ? there : undefined);
    if (usable !== undefined && usable.localName === node.tag) {
      if (usable !== there) parent.insertBefore(usable, there ?? null);
      patchElement(usable, node);
    } else parent.insertBefore(made(node, parent), there ?? null);
  }
  while (parent.childNodes.length > next.length) parent.lastChild?.remove();
}

function patchText(parent: Element, there: ChildNode | undefined, text: string): void {
  if (there?.nodeType !== Node.TEXT_NODE) parent.insertBefore(document.createTextNode(text), there ?? null);
  else if (there.nodeValue !== text) there.nodeValue = text;
}

function patchElement(element: Element, { attributes, children }: VElement): void {
  for (const { name } of [...element.attributes]) {
    if (!(name in attributes) && !readers.has(name)) element.removeAttribute(name);
  }
  for (const [name, value] of Object.entries(attributes)) {
    if (element.getAttribute(name) !== value) element.setAttribute(name, value);
  }
  patch(element, children);
}

function made(node: VElement, parent: Element): Element {
  const inside = node.tag === 'svg' || (parent.namespaceURI === svg && parent.localName !== 'foreignObject');
  const element = inside ? document.createElementNS(svg, node.tag) : document.createElement(node.tag);
  patchElement(element, node);
  return element;
}
