import {
  type BuildOptions,
  type Cancellation,
  DefaultDocumentBuilder,
  DocumentState,
  interruptAndCheck,
  isOperationCancelled,
  type LangiumDocument,
  type MaybePromise,
  URI,
} from 'langium';
import type { Drawings } from './drawings.ts';
import type { BookIndex } from './index-manager.ts';
import type { LayupServices, LayupSharedServices } from './services.ts';
import { isStock } from './stock.ts';

type Phase = readonly [DocumentState, (document: LangiumDocument) => MaybePromise<unknown>];

/**
 * Builds documents so that the one being looked at never waits for the book: all documents are parsed and indexed (names
 * must be known before any is linked), then changed and open ones go through to their findings before the others begin.
 */
export class BookBuilder extends DefaultDocumentBuilder {
  readonly #index: BookIndex;
  readonly #drawings: Drawings;
  #changed: ReadonlySet<string> = new Set();

  constructor(services: LayupSharedServices) {
    super(services);
    this.#index = services.workspace.IndexManager;
    this.#drawings = services.workspace.Drawings;
  }

  override update(changed: URI[], deleted: URI[], token?: Cancellation.CancellationToken): Promise<void> {
    const ours = changed.filter((uri) => !isStock(uri));
    this.#changed = new Set(ours.map(String));
    return super.update(ours, deleted, token);
  }

  /** A document is linked again where it asked for a name that a changed file exported; a name that is missing alone is no cause. */
  protected override shouldRelink(document: LangiumDocument, changed: Set<string>): boolean {
    return this.#index.isAffected(document, changed);
  }

  /** There is one kind of check: what was checked lacks none. Langium looks through the kinds of every document at every key. */
  protected override resultsAreIncomplete(document: LangiumDocument): boolean {
    const state = this.buildState.get(document.uri.toString());
    return state?.completed !== true || !state.options.validation;
  }

  protected override async buildDocuments(
    given: LangiumDocument[],
    options: BuildOptions,
    token: Cancellation.CancellationToken,
  ): Promise<void> {
    this.prepareBuild(given, options);
    for (const phase of this.#reading(token)) {
      await this.#advance(given, phase, token);
      await this.#finish(given, phase[0], token);
    }
    if (options.eagerLinking === false) return;
    const documents = this.#withWaiting(given, options);
    const first = documents.filter((document) => this.#isUrgent(document));
    for (const phase of this.#understanding(token)) await this.#advance(first, phase, token);
    for (const phase of this.#understanding(token)) {
      await this.#advance(documents, phase, token);
      await this.#finish(documents, phase[0], token);
    }
  }

  #reading(token: Cancellation.CancellationToken): Phase[] {
    return [
      [DocumentState.Parsed, (document) => this.langiumDocumentFactory.update(document, token)],
      [DocumentState.IndexedContent, (document) => this.indexManager.updateContent(document, token)],
      // Drawings are there before anything is computed of any recipe: one may have its outline from another.
      [DocumentState.ComputedScopes, (document) => this.#drawings.load(document)],
    ];
  }

  #understanding(token: Cancellation.CancellationToken): Phase[] {
    const link = (document: LangiumDocument): Promise<void> =>
      this.serviceRegistry.getServices(document.uri).references.Linker.link(document, token);
    const validate = async (document: LangiumDocument): Promise<void> => {
      if (this.shouldValidate(document)) await this.validate(document, token);
      this.markAsCompleted(document);
    };
    return [
      [DocumentState.Linked, link],
      [DocumentState.IndexedReferences, (document) => this.indexManager.updateReferences(document, token)],
      [DocumentState.Validated, validate],
    ];
  }

  async #advance(
    documents: readonly LangiumDocument[],
    [state, step]: Phase,
    token: Cancellation.CancellationToken,
  ): Promise<void> {
    for (const document of documents) {
      if (document.state >= state) continue;
      await interruptAndCheck(token);
      try {
        await step(document);
      } catch (error) {
        // One document that cannot be built must not keep the others from it.
        if (isOperationCancelled(error)) throw error;
        console.error(`${document.uri.toString(true)}: ${DocumentState[state]} failed:`, error);
      }
      document.state = state;
      await this.notifyDocumentPhase(document, state, token);
    }
  }

  /** Tells those who wait for the whole book, also when there was nothing to do. */
  async #finish(
    documents: LangiumDocument[],
    state: DocumentState,
    token: Cancellation.CancellationToken,
  ): Promise<void> {
    for (const listener of [...this.buildPhaseListeners.get(state)]) {
      await interruptAndCheck(token);
      await listener(documents, token);
    }
    this.currentState = state;
  }

  /** Adds the documents that asked for a name which has just appeared. */
  #withWaiting(given: LangiumDocument[], options: BuildOptions): LangiumDocument[] {
    const known = new Set(given);
    const added: LangiumDocument[] = [];
    const again: LangiumDocument[] = [];
    for (const uri of this.#index.takeWaiting()) {
      const document = this.langiumDocuments.getDocument(URI.parse(uri));
      if (document === undefined || document.state <= DocumentState.ComputedScopes) continue;
      this.resetToState(document, DocumentState.ComputedScopes);
      again.push(document);
      if (!known.has(document)) added.push(document);
    }
    this.prepareBuild(again, options);
    const told = this.#alsoAffected(new Set([...given, ...added]));
    this.prepareBuild(told, options);
    return this.sortDocuments([...given, ...added, ...told]);
  }

  /** Documents that are linked well, but whose findings may differ now. */
  #alsoAffected(built: ReadonlySet<LangiumDocument>): LangiumDocument[] {
    const told: LangiumDocument[] = [];
    for (const services of this.serviceRegistry.all as Iterable<Partial<LayupServices>>) {
      for (const document of services.findings?.alsoAffected?.() ?? []) {
        if (built.has(document) || document.state < DocumentState.Validated) continue;
        this.resetToState(document, DocumentState.IndexedReferences);
        told.push(document);
      }
    }
    return told;
  }

  #isUrgent(document: LangiumDocument): boolean {
    return this.#changed.has(document.uri.toString()) || this.textDocuments?.get(document.uri) !== undefined;
  }
}
