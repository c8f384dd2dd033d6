import { pages } from '../rules/generated/pages.ts';

/** The page of a rule as its readers get it: its prose and examples, with the marks below the lines. */
export function rulePage(name: string): string | undefined {
  return Object.hasOwn(pages, name) ? pages[name] : undefined;
}

/** Names of all rules that have a page, in order of the alphabet. */
export const rulePageNames: readonly string[] = Object.keys(pages).sort();
