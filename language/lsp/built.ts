import { type Cancellation, DocumentState, type LangiumDocument, URI } from 'langium';
import type { LayupServices } from '../book/services.ts';

/** The document of an address once its names are known; none where the book has no such file. */
export async function builtDocument(
  { shared }: LayupServices,
  address: string,
  token: Cancellation.CancellationToken,
): Promise<LangiumDocument | undefined> {
  const { LangiumDocuments, DocumentBuilder, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.ready;
  const uri = URI.parse(address);
  if (!LangiumDocuments.hasDocument(uri)) return undefined;
  await DocumentBuilder.waitUntil(DocumentState.IndexedReferences, uri, token);
  return LangiumDocuments.getDocument(uri);
}
