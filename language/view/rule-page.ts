import { pages } from '../rules/generated/pages.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule } from '../rules/rule.ts';
import { nearestWords } from '../words/nearest.ts';

/** A rule and the page that explains it. */
export interface ExplainedRule {
  readonly rule: Rule;
  /** Markdown; begins with a heading of the rule's name */
  readonly page: string;
  /** the first paragraph under the heading */
  readonly opening: string;
}

export function explained(name: string): ExplainedRule | undefined {
  const rule = (rules as readonly Rule[]).find((each) => each.name === name);
  const page = Object.hasOwn(pages, name) ? pages[name] : undefined;
  return rule === undefined || page === undefined ? undefined : { rule, page, opening: openingOf(page) };
}

/** Names of rules that may have been meant. */
export const rulesAlike = (name: string): string[] => nearestWords(name, Object.keys(pages), 3);

function openingOf(page: string): string {
  const paragraphs = page.split(/\n\s*\n/).map((paragraph) => paragraph.trim());
  return (paragraphs.find((paragraph) => paragraph !== '' && !paragraph.startsWith('#')) ?? '').replace(
    /\s*\n\s*/g,
    ' ',
  );
}
