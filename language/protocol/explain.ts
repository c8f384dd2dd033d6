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
