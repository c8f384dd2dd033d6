import type { LangiumDocument } from 'langium';
import type { CancellationToken } from 'vscode-languageserver-protocol';
import type { Diagnostic } from 'vscode-languageserver-types';

/** Where the findings of a document come from. The book asks for them once a document is linked. */
export interface Findings {
  /** Must let a cancelled token's exception through; anything else that it throws is logged. */
  of(document: LangiumDocument, token: CancellationToken): Promise<readonly Diagnostic[]> | readonly Diagnostic[];
}

export const noFindings: Findings = { of: () => [] };
