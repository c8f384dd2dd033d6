/** How the language client talks to the server: documents, settings, what a hover may run. */
import * as vscode from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';
import { linkFindings } from './link-findings.ts';

/** Commands that a link in a hover or a page may run; no other is, whatever a recipe's text says. */
const linkCommands = ['laybook.explainRule', 'laybook.copyText'] as const;

export function clientOptions(log: vscode.LogOutputChannel): LanguageClientOptions {
  return {
    // Any scheme: files, unsaved text, and what the editor opens from elsewhere.
    documentSelector: [{ language: 'layup' }],
    outputChannel: log,
    traceOutputChannel: log,
    // Numbers on screen are written as in the language of the editor; hovers may hold links that run a command.
    initializationOptions: { locale: vscode.env.language, commandLinks: true },
    middleware: {
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
