import { type FileSystemProvider, type TextDocument, URI } from 'langium';
import { DefaultDocumentUpdateHandler } from 'langium/lsp';
import type { TextDocumentChangeEvent } from 'vscode-languageserver';
import {
  type DidChangeWatchedFilesParams,
  FileChangeType,
  type FileSystemWatcher,
} from 'vscode-languageserver-protocol';
import { isDrawing } from '../book/drawing-files.ts';
import type { Drawings } from '../book/drawings.ts';
import { type BookIndex, fileKey } from '../book/index-manager.ts';
import type { LayupSharedServices } from '../book/services.ts';
import { isStock } from '../book/stock.ts';

export const watchedFiles = '**/*.{layup,svg,dxf}';

/** Turns what happens to texts and files into updates of the book. */
export class LayupUpdateHandler extends DefaultDocumentUpdateHandler {
  readonly #index: BookIndex;
  readonly #files: FileSystemProvider;
  readonly #drawings: Drawings;

  constructor(services: LayupSharedServices) {
    super(services);
    this.#index = services.workspace.IndexManager;
    this.#files = services.workspace.FileSystemProvider;
    this.#drawings = services.workspace.Drawings;
  }

  protected override getWatchers(): FileSystemWatcher[] {
    return [{ globPattern: watchedFiles }];
  }

  override didChangeWatchedFiles(params: DidChangeWatchedFilesParams): void {
    this.onWatchedFilesChangeEmitter.fire(params);
    const changed = new Map<string, URI>();
    const deleted = new Map<string, URI>();
    for (const { uri: address, type } of params.changes) {
      const uri = URI.parse(address);
      // A drawing is no document of the book: whoever names it is looked at again.
      if (isDrawing(uri)) {
        this.#drawings.changed(uri);
        for (const user of this.#index.askers(fileKey(uri))) changed.set(user, URI.parse(user));
      } else (type === FileChangeType.Deleted ? deleted : changed).set(uri.toString(), uri);
    }
    for (const uri of deleted.keys()) changed.delete(uri);
    this.fireDocumentUpdate([...changed.values()], [...deleted.values()]);
  }

  /** What was typed and not saved is gone: the file counts again, if there is one. */
  didCloseDocument(event: TextDocumentChangeEvent<TextDocument>): void {
    const uri = URI.parse(event.document.uri);
    if (isStock(uri)) return;
    this.#exists(uri).then((exists) => this.fireDocumentUpdate(exists ? [uri] : [], exists ? [] : [uri]));
  }

  /** Takes a change of the book into account; what fails is logged and the next change is taken all the same. */
  override fireDocumentUpdate(changed: URI[], deleted: URI[]): void {
    if (changed.length + deleted.length === 0) return;
    this.workspaceManager.ready
      .then(() => this.workspaceLock.write((token) => this.documentBuilder.update(changed, deleted, token)))
      .catch((error: unknown) => console.error('A change of the book could not be taken in:', error));
  }

  async #exists(uri: URI): Promise<boolean> {
    if (uri.scheme === 'untitled' || !this.#index.schemes.has(uri.scheme)) return false;
    return this.#files.exists(uri).catch(() => false);
  }
}
