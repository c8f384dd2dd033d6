import { DocumentState, type LangiumDocument, TextDocument, URI } from 'langium';
import { VirtualFileSystemProvider } from 'langium/test';
import {
  createLayupServices,
  type LayupServices,
  type LayupSharedServices,
  type MoreServices,
} from '../../language/book/services.ts';

const folder = 'file:///book';
export const addressOf = (name: string): URI => URI.parse(`${folder}/${name}`);
export const nameOf = (uri: URI | string): string => uri.toString().replace(`${folder}/`, '');

/** What the builder did since the last time it was asked. */
export interface Work {
  readonly parsed: readonly string[];
  readonly linked: readonly string[];
  readonly validated: readonly string[];
}

/** A book in memory: files of one workspace folder, built as the server would. */
export interface TestBook<More = unknown> {
  readonly services: LayupServices & More;
  readonly shared: LayupSharedServices;
  document(name: string): LangiumDocument;
  /** Opens a file in the editor. */
  open(name: string): Promise<void>;
  /** Another text for a file: typed where it is open, else written to the disk. A new name is a new file. */
  edit(name: string, text: string): Promise<void>;
  remove(name: string): Promise<void>;
  /** Work done since this was asked last, in the order in which it was done. */
  takeWork(): Work;
  dispose(): void;
}

export interface OpenOptions<More = unknown> {
  /** files that are open in the editor from the start */
  readonly open?: readonly string[];
  readonly modules?: readonly MoreServices<More>[];
}

export async function openBook<More = unknown>(
  files: Readonly<Record<string, string>>,
  options: OpenOptions<More> = {},
): Promise<TestBook<More>> {
  const disk = new VirtualFileSystemProvider();
  const { shared, layup } = createLayupServices<More>({ fileSystemProvider: () => disk }, ...(options.modules ?? []));
  const { workspace } = shared;
  const versions = new Map<string, number>();
  let work = { parsed: [] as string[], linked: [] as string[], validated: [] as string[] };
  const note = (state: DocumentState, list: keyof Work) =>
    workspace.DocumentBuilder.onDocumentPhase(state, (document) => {
      work[list].push(nameOf(document.uri));
    });
  const listeners = [
    note(DocumentState.Parsed, 'parsed'),
    note(DocumentState.Linked, 'linked'),
    note(DocumentState.Validated, 'validated'),
  ];

  const type = (name: string, text: string): void => {
    const version = (versions.get(name) ?? 0) + 1;
    versions.set(name, version);
    workspace.TextDocuments.set(TextDocument.create(addressOf(name).toString(), 'layup', version, text));
  };
  const update = (changed: URI[], deleted: URI[] = []): Promise<void> =>
    workspace.WorkspaceLock.write((token) => workspace.DocumentBuilder.update(changed, deleted, token));

  disk.insert(addressOf('.book'), '');
  for (const [name, text] of Object.entries(files)) disk.insert(addressOf(name), text);
  for (const name of options.open ?? []) type(name, disk.readFileSync(addressOf(name)));
  await workspace.WorkspaceManager.initializeWorkspace([{ uri: folder, name: 'book' }]);

  return {
    services: layup,
    shared,
    document(name) {
      const document = workspace.LangiumDocuments.getDocument(addressOf(name));
      if (document === undefined) throw new Error(`the book has no ${name}`);
      return document;
    },
    async open(name) {
      type(name, disk.readFileSync(addressOf(name)));
      await update([addressOf(name)]);
    },
    async edit(name, text) {
      if (versions.has(name)) type(name, text);
      else disk.insert(addressOf(name), text);
      await update([addressOf(name)]);
    },
    async remove(name) {
      disk.delete(addressOf(name));
      await update([], [addressOf(name)]);
    },
    takeWork() {
      const done = work;
      work = { parsed: [], linked: [], validated: [] };
      return done;
    },
    dispose() {
      for (const listener of listeners) listener.dispose();
    },
  };
}
