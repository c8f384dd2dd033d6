import { EmptyFileSystem, inject, type LangiumDocument, URI } from 'langium';
import { createDefaultModule, createDefaultSharedModule, type LangiumServices, type LangiumSharedServices } from 'langium/lsp';
import { LayupGeneratedModule, LayupGeneratedSharedModule } from '../../../language/grammar/generated/module.ts';
import { grammarModule } from '../../../language/grammar/module.ts';
import { viewModule } from '../../../language/lsp/module.ts';

/** Services with the grammar and the views alone: no stock library, no rules. */
export function viewServices(): LangiumServices {
  const shared: LangiumSharedServices = inject(createDefaultSharedModule(EmptyFileSystem), LayupGeneratedSharedModule);
  const services: LangiumServices = inject(createDefaultModule({ shared }), LayupGeneratedModule, grammarModule, viewModule);
  shared.ServiceRegistry.register(services);
  return services;
}

let count = 0;

/** A document of a text, parsed and nothing more. */
export function parsed(services: LangiumServices, text: string): LangiumDocument {
  return services.shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(`memory:/view-${++count}.layup`));
}
