import type { Text } from '../../calc/figure/figure.ts';
import type { Place } from '../../calc/model/index.ts';
import type { Fix, Span } from '../lower/index.ts';
import type { Severity } from './rule.ts';

/** What a check reports: at a path of the entry, in words with named figures. */
export interface Report {
  readonly at: string;
  readonly message: Text;
  /** where this case weighs less than the rule does */
  readonly severity?: Exclude<Severity, 'error'>;
  readonly related?: readonly { readonly at: Place; readonly message: Text }[];
  readonly fixes?: readonly (Fix | undefined)[];
}

/** A report with its place in the text, its weight, and whether the line accepts it. */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: Text;
  readonly span: Span;
  readonly related: readonly { readonly at?: Place; readonly span?: Span; readonly message: Text }[];
  readonly fixes: readonly Fix[];
  readonly accepted?: string;
}
