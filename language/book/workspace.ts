import {
  DefaultWorkspaceManager,
  DocumentState,
  type FileSystemNode,
  type LangiumDocument,
  type LangiumDocumentFactory,
  type Stream,
  URI,
  UriUtils,
} from 'langium';
import type { BookIndex } from './index-manager.ts';
import type { LayupSharedServices } from './services.ts';

const skippedFolders: ReadonlySet<string> = new Set(['node_modules', 'dist', 'out']);

/** Finds the `.layup` files of the workspace's folders: together they are the book. */
export class LayupWorkspace extends DefaultWorkspaceManager {
  readonly #factory: LangiumDocumentFactory;
  readonly #index: BookIndex;
  // Without this the first key pressed would validate the whole book.
  override initialBuildOptions = { validation: { categories: ['built-in', 'fast'] } };

  constructor(services: LayupSharedServices) {
    super(services);
    this.#factory = services.workspace.LangiumDocumentFactory;
    this.#index = services.workspace.IndexManager;
  }

  override initialize(params: Parameters<DefaultWorkspaceManager['initialize']>[0]): void {
    super.initialize(params);
    for (const folder of params.workspaceFolders ?? []) this.#index.schemes.add(URI.parse(folder.uri).scheme);
  }

  override shouldIncludeEntry(entry: FileSystemNode): boolean {
    const name = UriUtils.basename(entry.uri);
    if (name.startsWith('.')) return false;
    return entry.isDirectory ? !skippedFolders.has(name) : entry.isFile && name.endsWith('.layup');
  }

  /** Only notes the files: the builder parses them, and lets requests in between. */
  protected override loadWorkspaceDocuments(
    uris: Stream<URI>,
    collect: (document: LangiumDocument) => void,
  ): Promise<void> {
    for (const uri of [...uris].sort((a, b) => (a.toString() < b.toString() ? -1 : 1))) {
      const document = this.#factory.fromModel({ $type: 'Unread' }, uri);
      document.state = DocumentState.Changed;
      collect(document);
    }
    return Promise.resolve();
  }
}
