import type { WirePosition } from './place.ts';

/** Request `laybook/explain`: the page of a rule, or the words that say there is no such rule. */
export const explainRequest = 'laybook/explain';
export interface ExplainParams {
  readonly rule: string;
  /** a line with a finding of the rule: its message and figures stand on top */
  readonly case?: { readonly uri: string; readonly position: WirePosition };
}
export interface ExplainResult {
  readonly markdown: string;
}

/** Request `laybook/rulePage` of the server to the editor: a page lies in a file beside the programs and is read when it is wanted. */
export const rulePageRequest = 'laybook/rulePage';
export interface RulePageParams {
  readonly rule: string;
}
export interface RulePageResult {
  /** Markdown; absent where there is no such page */
  readonly text?: string;
}
