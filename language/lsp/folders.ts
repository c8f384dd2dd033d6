import { URI } from 'langium';
import type { FileOperationHandler } from 'langium/lsp';
import type {
  DeleteFilesParams,
  FileOperationRegistrationOptions,
  RenameFilesParams,
} from 'vscode-languageserver-protocol';
import type { LayupSharedServices } from '../book/services.ts';

const folders: FileOperationRegistrationOptions = { filters: [{ pattern: { glob: '**', matches: 'folder' } }] };
const addressOf = ({ uri }: { readonly uri: string }): URI => URI.parse(uri);

/** Folders deleted or renamed in the editor: the watcher of files says nothing of what was in them. */
export class FolderOperations implements FileOperationHandler {
  readonly fileOperationOptions = { didDelete: folders, didRename: folders };
  readonly #services: LayupSharedServices;

  constructor(services: LayupSharedServices) {
    this.#services = services;
  }

  didDeleteFiles({ files }: DeleteFilesParams): void {
    this.#services.lsp.DocumentUpdateHandler.fireDocumentUpdate([], files.map(addressOf));
  }

  didRenameFiles({ files }: RenameFilesParams): void {
    this.#services.lsp.DocumentUpdateHandler.fireDocumentUpdate(
      files.map((file) => URI.parse(file.newUri)),
      files.map((file) => URI.parse(file.oldUri)),
    );
  }
}

/** Folders that are added to the workspace, or leave it, while the server runs. */
export function followFolders(services: LayupSharedServices): void {
  const { Connection, LanguageServer, DocumentUpdateHandler } = services.lsp;
  let told = false;
  LanguageServer.onInitialize(({ capabilities }) => {
    told = capabilities.workspace?.workspaceFolders === true;
  });
  LanguageServer.onInitialized(() => {
    if (!told) return;
    Connection?.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      for (const folder of added) services.workspace.IndexManager.schemes.add(addressOf(folder).scheme);
      DocumentUpdateHandler.fireDocumentUpdate(added.map(addressOf), removed.map(addressOf));
    });
  });
}
