import { EmptyFileSystem, URI } from 'langium';
import { createLayupServices } from '../book/services.ts';
import { analysisModule } from './module.ts';
import type { Shelf } from './shelf.ts';

/** A book of texts as they once stood: of its own, so that nothing of it meets the book of today. */
export async function pastBook(files: readonly { readonly uri: string; readonly text: string }[]): Promise<Shelf> {
  const { layup: services } = createLayupServices(EmptyFileSystem, analysisModule);
  const { LangiumDocuments, LangiumDocumentFactory, DocumentBuilder } = services.shared.workspace;
  for (const { uri, text } of files) {
    const address = URI.parse(uri);
    if (!LangiumDocuments.hasDocument(address))
      LangiumDocuments.addDocument(LangiumDocumentFactory.fromString(text, address));
  }
  await DocumentBuilder.build(LangiumDocuments.all.toArray(), { validation: false });
  return services.analysis.shelf();
}
