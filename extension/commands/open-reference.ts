import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ReferenceParams, type ReferenceResult, referenceRequest } from '../../language/protocol/reference.ts';
import { showPage } from './show-page.ts';

const scheme = 'laybook-reference';

async function ask(client: BaseLanguageClient, params: ReferenceParams): Promise<ReferenceResult> {
  await client.start();
  return client.sendRequest<ReferenceResult>(referenceRequest, params);
}

/** The command that opens a chapter of the reference, and the documents that hold the chapters: `laybook-reference:/steps.md`. */
export function registerReference(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(scheme, {
      provideTextDocumentContent: async ({ path }) =>
        (await ask(client, { chapter: path.replace(/^\/|\.md$/g, '') })).markdown,
    }),
    vscode.commands.registerCommand('laybook.openReference', (given?: unknown) => openReference(client, given)),
  );
}

/** Opens the chapter given, else one that the user chooses. */
async function openReference(client: BaseLanguageClient, given: unknown): Promise<void> {
  const { chapters } = await ask(client, {});
  const known = chapters.find(({ name }) => name === given);
  const chosen =
    known ??
    (await vscode.window.showQuickPick(
      chapters.map((chapter) => ({ ...chapter, label: chapter.title, detail: chapter.about })),
      { title: vscode.l10n.t('Open the reference') },
    ));
  if (chosen !== undefined) await showPage(vscode.Uri.from({ scheme, path: `/${chosen.name}.md` }));
}
