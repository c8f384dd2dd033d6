import { type Module, URI } from 'langium';
import type { PartialLangiumSharedServices } from 'langium/lsp';
import { FolderOperations } from '../lsp/folders.ts';
import { LayupRename } from '../lsp/rename.ts';
import { LayupUpdateHandler } from '../lsp/update-handler.ts';
import { LayupWorkspaceSymbolProvider } from '../lsp/workspace-symbols.ts';
import { BookBuilder } from './builder.ts';
import { LayupDocumentFactory, LayupDocuments } from './documents.ts';
import { Drawings } from './drawings.ts';
import { noFindings } from './findings-port.ts';
import { BookIndex } from './index-manager.ts';
import { LayupLinker } from './linker.ts';
import { BookNames } from './names.ts';
import { LayupReferences } from './references.ts';
import { LayupScopeProvider } from './scope.ts';
import type { LayupServices, LayupSharedServices, PartialLayupServices } from './services.ts';
import { SettingsProvider } from './settings.ts';
import { StockLibrary } from './stock.ts';
import { LayupValidator } from './validator.ts';
import { LayupWorkspace } from './workspace.ts';

/** The book: one for all documents. */
export const sharedModule: Module<
  LayupSharedServices,
  PartialLangiumSharedServices & { readonly workspace?: { readonly Drawings?: Drawings } }
> = {
  lsp: {
    DocumentUpdateHandler: (services) => new LayupUpdateHandler(services),
    WorkspaceSymbolProvider: (services) => new LayupWorkspaceSymbolProvider(services),
    FileOperationHandler: (services) => new FolderOperations(services),
  },
  workspace: {
    ConfigurationProvider: (services) => new SettingsProvider(services),
    DocumentBuilder: (services) => new BookBuilder(services),
    Drawings: (services) => drawingsOf(services),
    IndexManager: (services) => new BookIndex(services),
    LangiumDocumentFactory: (services) => new LayupDocumentFactory(services),
    LangiumDocuments: (services) => new LayupDocuments(services),
    WorkspaceManager: (services) => new LayupWorkspace(services),
  },
};

/** The drawings of the workspace's folders, over whatever reads files here. */
function drawingsOf({ workspace }: LayupSharedServices): Drawings {
  return new Drawings(
    () => workspace.FileSystemProvider,
    () => (workspace.WorkspaceManager.workspaceFolders ?? []).map((folder) => URI.parse(folder.uri)),
  );
}

/** Names, references and findings of the notation. */
export const bookModule: Module<LayupServices, PartialLayupServices> = {
  references: {
    Linker: (services) => new LayupLinker(services),
    References: (services) => new LayupReferences(services),
    ScopeProvider: (services) => new LayupScopeProvider(services),
  },
  validation: {
    DocumentValidator: (services) => new LayupValidator(services),
  },
  lsp: {
    RenameProvider: (services) => new LayupRename(services),
  },
  names: (services) =>
    new BookNames(services.shared.workspace.IndexManager, services.stock, services.workspace.AstNodeLocator),
  stock: (services) => new StockLibrary(services),
  settings: (services) => services.shared.workspace.ConfigurationProvider,
  findings: () => noFindings,
};
