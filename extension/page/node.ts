/** An element of the page as it should be; a string is a text. */
export type VNode = string | VElement;
export interface VElement {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly VNode[];
}

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** An attribute that is undefined or false is not there; one that is true is there without a value. */
export function h(
  tag: string,
  attributes: Attributes = {},
  ...children: readonly (VNode | readonly VNode[])[]
): VElement {
  const written: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) written[name] = value === true ? '' : String(value);
  }
  return { tag, attributes: written, children: children.flat() as readonly VNode[] };
}

/** All texts below a node, for tests and for who reads the page aloud. */
export const textOf = (node: VNode): string => (typeof node === 'string' ? node : node.children.map(textOf).join(''));
