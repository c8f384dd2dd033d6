import { openings } from '../rules/generated/openings.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule } from '../rules/rule.ts';
import { nearestWords } from '../words/nearest.ts';

/** A rule and how the page that explains it begins. */
export interface ExplainedRule {
  readonly rule: Rule;
  /** the first paragraph under the heading of the page */
  readonly opening: string;
}

export function explained(name: string): ExplainedRule | undefined {
  const rule = (rules as readonly Rule[]).find((each) => each.name === name);
  const opening = Object.hasOwn(openings, name) ? openings[name] : undefined;
  return rule === undefined || opening === undefined ? undefined : { rule, opening };
}

/** Names of rules that may have been meant. */
export const rulesAlike = (name: string): string[] => nearestWords(name, Object.keys(openings), 3);
