import { Cancellation, DocumentState } from 'langium';
import type { WithAnalysis } from '../analysis/module.ts';
import { diagnosticsOf } from './diagnostics.ts';
import { Typing } from './typing.ts';

/** Follows what is typed in the open texts; what is held back meanwhile is told when a line is left. */
export function typingIn(services: WithAnalysis): Typing {
  const { lsp, workspace } = services.shared;
  const typing = new Typing(workspace.TextDocuments, () => {
    tellAgain(services).catch((error: unknown) => console.error('What was held back could not be told:', error));
  });
  // Severities, units and files of others say something new of every text, the one that is typed too.
  services.settings.onChange(() => typing.leave());
  lsp.DocumentUpdateHandler.onWatchedFilesChange(() => typing.leave());
  return typing;
}

/** Tells what is held back of the documents that are read; the others are told when they are. */
async function tellAgain(services: WithAnalysis): Promise<void> {
  const { lsp, workspace } = services.shared;
  await workspace.WorkspaceLock.read(async () => {
    for (const uri of services.steady.held) {
      const document = workspace.LangiumDocuments.getDocument(uri);
      if (document === undefined || document.state < DocumentState.Validated || !services.steady.isOfText(document))
        continue;
      document.diagnostics = await diagnosticsOf(services, document, Cancellation.CancellationToken.None);
      await lsp.Connection?.sendDiagnostics({ uri: uri.toString(), diagnostics: document.diagnostics });
    }
    services.steady.toldAgain();
  });
}
