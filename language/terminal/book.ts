import { type LangiumDocument, URI } from 'langium';
import { analysisModule, type WithAnalysis } from '../analysis/module.ts';
import { createLayupServices } from '../book/services.ts';
import { BoundedFiles } from '../lsp/node-files.ts';
import { say, sayText } from '../view/text.ts';
import { exitCodes } from './exit-codes.ts';
import { filesBelow, findPaths, told, whyNotRead } from './paths.ts';
import type { Screen } from './screen.ts';

export interface OpenBook {
  readonly services: WithAnalysis;
  /** the documents of the paths given, in order of their paths */
  readonly documents: readonly LangiumDocument[];
  /** how a document is called where it is told of */
  nameOf(uri: string): string;
  /** files that could not be read; they have been told of */
  readonly unread: number;
}

/** Reads the paths given and the book around them; a name is linked when somebody follows it, and `check` follows none. */
export async function openBook(paths: readonly string[], book: string | undefined, screen: Screen): Promise<OpenBook> {
  const { services, belongs } = terminalServices();
  const { files, folders, ...found } = await findPaths(paths, screen.folder, belongs);
  const around = book === undefined ? folders : (await findPaths([book], screen.folder, belongs)).folders;
  const { LangiumDocuments, LangiumDocumentFactory, DocumentBuilder } = services.shared.workspace;
  // Drawings are read from the folder that the command was called in, or from the folders that were given.
  services.shared.workspace.WorkspaceManager.initialize({
    processId: null,
    rootUri: null,
    capabilities: {},
    workspaceFolders: [screen.folder, ...around].map((name) => ({ uri: URI.file(name).toString(), name })),
  });
  const disk = new BoundedFiles();
  let unread = 0;
  const tell = (file: string, error: NodeJS.ErrnoException): void => {
    unread++;
    screen.err(`laybook: ${sayText(whyNotRead(told(file, screen.folder), error))}\n`);
  };
  for (const folder of found.unread) tell(folder.path, folder.error);
  for (const file of new Set([...files, ...(await filesBelow(around, belongs))].sort())) {
    const uri = URI.file(file);
    try {
      LangiumDocuments.addDocument(LangiumDocumentFactory.fromString(disk.readFileSync(uri), uri));
    } catch (error) {
      tell(file, error as NodeJS.ErrnoException);
    }
  }
  await DocumentBuilder.build(LangiumDocuments.all.toArray(), { eagerLinking: false });
  return {
    services,
    documents: files.flatMap((file) => LangiumDocuments.getDocument(URI.file(file)) ?? []),
    nameOf: (uri) => nameOf(URI.parse(uri), screen.folder),
    unread,
  };
}

/** Services over the disk, and what belongs to a book. */
export function terminalServices() {
  const { layup: services } = createLayupServices({ fileSystemProvider: () => new BoundedFiles() }, analysisModule);
  const { WorkspaceManager } = services.shared.workspace;
  return { services, belongs: WorkspaceManager.shouldIncludeEntry.bind(WorkspaceManager) };
}

function nameOf(uri: URI, from: string): string {
  return uri.scheme === 'file' ? told(uri.fsPath, from) : say('stock library: {place}', { place: uri.path.slice(1) });
}

/** Input that could not be read outweighs what was found in the rest. */
export const endOf = (book: OpenBook, failed: boolean) =>
  book.unread > 0 ? exitCodes.usage : failed ? exitCodes.findings : exitCodes.clean;
