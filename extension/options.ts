/** How the language client talks to the server: documents, settings, what a hover may run. */
import type * as vscode from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';
import type { LeftAlone } from './left-alone.ts';
import { linkFindings } from './link-findings.ts';
import type { Translation } from './translation.ts';

/** Commands that a link in a hover or a page may run; no other is, whatever a recipe's text says. */
const linkCommands = ['laybook.explainRule', 'laybook.copyText', 'laybook.showPlan'] as const;

export function clientOptions(
  log: vscode.LogOutputChannel,
  { locale, texts }: Translation,
  leftAlone: LeftAlone,
): LanguageClientOptions {
  return {
    // Any scheme: files, unsaved text, and what the editor opens from elsewhere.
    documentSelector: [{ language: 'layup' }],
    outputChannel: log,
    traceOutputChannel: log,
    // What is shown is said in the language of the editor, numbers too; hovers may hold links that run a command.
    // Asked for at each start: a server that has died is told of what.
    initializationOptions: () => ({ locale, translation: texts, commandLinks: true, leftAlone: leftAlone.keys }),
    middleware: {
      didOpen(document, next) {
        leftAlone.opened(document);
        return next(document);
      },
      didChange(event, next) {
        leftAlone.changed(event.document);
        return next(event);
      },
      handleDiagnostics(uri, findings, next) {
        linkFindings(uri, findings);
        next(uri, findings);
      },
    },
    // The server asks for the file events that it wants.
    synchronize: { configurationSection: 'laybook' },
    markdown: {
      isTrusted: { enabledCommands: linkCommands },
      supportHtml: false,
    },
  };
}
