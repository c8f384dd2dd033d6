/** What the style sheets of an SVG file hide: rules for a class alone (`.a`, `rect.a`); all other selectors are passed by. */
import type { Element } from './elements.ts';

const properties = ['display', 'visibility'] as const;
type Property = (typeof properties)[number];

/** What a rule says of a property, and how it stands against others: the higher number wins. */
interface Said {
  readonly value: string;
  readonly rank: number;
}

/** By `.class` and `element.class`. */
export type ClassRules = ReadonlyMap<string, Readonly<Partial<Record<Property, Said>>>>;

/** More classes than that of one element are not looked at. */
const mostClasses = 32;

/** A rule that names the element as well wins over any that does not, as far apart as no sheet has rules. */
const withElement = 1e9;

/**
 * The rules of a style sheet (Cascading Style Sheets 2.1, chapters 4 and 6), read once from front to back. What stands in an
 * at-rule, as for print alone, is passed by.
 */
export function classRules(sheet: string): ClassRules {
  const css = sheet.replace(/\/\*[\s\S]*?(?:\*\/|$)/g, ' ');
  const rules = new Map<string, Partial<Record<Property, Said>>>();
  let order = 0;
  for (let at = 0; at < css.length; ) {
    const opens = css.indexOf('{', at);
    if (opens < 0) break;
    // `@import ...;` has no block
    const before = css.slice(at, opens);
    const prelude = before.slice(before.lastIndexOf(';') + 1).trim();
    const end = endOfBlock(css, opens);
    if (!prelude.startsWith('@')) {
      order++;
      const said = declared(css.slice(opens + 1, end));
      for (const selector of said.size === 0 ? [] : prelude.split(',')) {
        const [, element, name] = /^([a-z]*)\.([^\s.#:[\]>+~*]+)$/i.exec(selector.trim()) ?? [];
        if (name === undefined) continue;
        const key = `${element}.${name}`;
        const rank = order + (element === '' ? 0 : withElement);
        const known = rules.get(key) ?? {};
        for (const [property, value] of said) known[property] = { value, rank };
        rules.set(key, known);
      }
    }
    at = end + 1;
  }
  return rules;
}

/** The place of the brace that closes the block which opens here, or the end of the sheet. */
function endOfBlock(css: string, opens: number): number {
  let depth = 0;
  for (let i = opens; i < css.length; i++) {
    if (css[i] === '{') depth++;
    else if (css[i] === '}' && --depth === 0) return i;
  }
  return css.length;
}

/** The last thing that a list of declarations says of each property. */
function declared(declarations: string): ReadonlyMap<Property, string> {
  const said = new Map<Property, string>();
  for (const declaration of declarations.split(';')) {
    const colon = declaration.indexOf(':');
    const property = properties.find((one) => one === declaration.slice(0, colon).trim().toLowerCase());
    const [value] = declaration
      .slice(colon + 1)
      .trim()
      .toLowerCase()
      .split(/[\s!]/, 1);
    if (property !== undefined && value) said.set(property, value);
  }
  return said;
}

/** Whether an element is not shown: its own style says so, else a rule for one of its classes, else its attribute. */
export function isHidden({ name, attributes }: Element, rules: ClassRules): boolean {
  const own = declared((attributes.style ?? '').slice(0, 10_000));
  const classes = rules.size === 0 ? [] : (attributes.class ?? '').slice(0, 10_000).trim().split(/\s+/, mostClasses);
  const found = (property: Property): string | undefined => {
    let best: Said | undefined;
    for (const one of classes)
      for (const key of [`.${one}`, `${name}.${one}`]) {
        const said = rules.get(key)?.[property];
        if (said !== undefined && said.rank > (best?.rank ?? 0)) best = said;
      }
    return own.get(property) ?? best?.value ?? attributes[property];
  };
  return found('display') === 'none' || found('visibility') === 'hidden';
}
