import { URI } from 'langium';
import { VirtualFileSystemProvider } from 'langium/test';
import { analysisModule, type WithAnalysis } from '../../language/analysis/module.ts';
import { createLayupServices, type LayupServices, type MoreServices } from '../../language/book/services.ts';

const folder = 'file:///book';

/** What a book says of its files when it is read for the first time. */
export class ColdBook {
  readonly #disk = new VirtualFileSystemProvider();
  readonly #services: LayupServices;
  #known: URI[] = [];

  constructor() {
    const { layup } = createLayupServices<WithAnalysis>(
      { fileSystemProvider: () => this.#disk },
      analysisModule as unknown as MoreServices<WithAnalysis>,
    );
    this.#services = layup;
    this.#disk.insert(URI.parse(`${folder}/.book`), '');
  }

  /** Diagnostics by file. Nothing of the texts read before is kept: their files are gone before these are read. */
  async read(files: Readonly<Record<string, string>>): Promise<Map<string, readonly unknown[]>> {
    const { DocumentBuilder, LangiumDocuments, WorkspaceManager } = this.#services.shared.workspace;
    if (this.#known.length === 0) await WorkspaceManager.initializeWorkspace([{ uri: folder, name: 'book' }]);
    await DocumentBuilder.update([], this.#known);
    for (const uri of this.#known) this.#disk.delete(uri);
    this.#known = Object.keys(files).map((name) => URI.parse(`${folder}/${name}`));
    for (const [name, text] of Object.entries(files)) this.#disk.insert(URI.parse(`${folder}/${name}`), text);
    await DocumentBuilder.update(this.#known, []);
    return new Map(
      this.#known.map((uri) => [
        uri.toString().slice(folder.length + 1),
        LangiumDocuments.getDocument(uri)?.diagnostics ?? [],
      ]),
    );
  }
}
