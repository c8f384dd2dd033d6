import type { Cancellation, LangiumDocument } from 'langium';

/** What the editor shows of a finding. */
export type Diagnostic = NonNullable<LangiumDocument['diagnostics']>[number];

/** Where the findings of a document come from. The book asks for them once a document is linked. */
export interface Findings {
  /** Must let a cancelled token's exception through; anything else that it throws is logged. */
  of(
    document: LangiumDocument,
    token: Cancellation.CancellationToken,
  ): Promise<readonly Diagnostic[]> | readonly Diagnostic[];
  /** Documents whose findings may differ now that others have changed, though nothing in them refers there by name: prices, the shop. */
  alsoAffected?(): Iterable<LangiumDocument>;
}

export const noFindings: Findings = { of: () => [] };
