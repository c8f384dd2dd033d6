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
}

export const noFindings: Findings = { of: () => [] };
