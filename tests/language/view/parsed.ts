import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { createLayupServices, type LayupServices } from '../../../language/book/services.ts';
import { viewModule } from '../../../language/lsp/module.ts';

/** The services with what the editor is shown, and no files. */
export function viewServices(): LayupServices {
  return createLayupServices(EmptyFileSystem, viewModule).layup;
}

let count = 0;

/** A document of a text, parsed and nothing more. */
export function parsed(services: LayupServices, text: string): LangiumDocument {
  return services.shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(`memory:/view-${++count}.layup`));
}
