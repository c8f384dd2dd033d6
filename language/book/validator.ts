import {
  Cancellation,
  type DocumentValidator,
  isOperationCancelled,
  type LangiumDocument,
  type ValidationOptions,
} from 'langium';
import type { Diagnostic, Findings } from './findings-port.ts';
import type { LayupServices } from './services.ts';

/** Every message is ours: the findings of the rules, none of the parser and the linker. */
export class LayupValidator implements DocumentValidator {
  readonly #findings: () => Findings;

  constructor(services: LayupServices) {
    this.#findings = () => services.findings;
  }

  async validateDocument(
    document: LangiumDocument,
    options: ValidationOptions = {},
    token = Cancellation.CancellationToken.None,
  ): Promise<Diagnostic[]> {
    if (options.categories !== undefined && !options.categories.includes('fast')) return [];
    try {
      return [...(await this.#findings().of(document, token))];
    } catch (error) {
      if (isOperationCancelled(error)) throw error;
      console.error(`${document.uri.toString(true)} could not be checked:`, error);
      return [];
    }
  }
}
