/** How the language client talks to the server: transport, documents, settings, what a hover may run. */
import * as vscode from 'vscode';
import { type LanguageClientOptions, type ServerOptions, TransportKind } from 'vscode-languageclient/node';

/** Commands that a link in a hover or a page may run; no other is, whatever a recipe's text says. */
const linkCommands = ['laybook.explainRule'] as const;

/** The server runs in a Node process of its own, the one that the editor brings. */
export function serverOptions(module: string): ServerOptions {
  const transport = TransportKind.ipc;
  return {
    run: { module, transport },
    debug: {
      module,
      transport,
      options: { execArgv: ['--nolazy', '--inspect=6009'] },
    },
  };
}

export function clientOptions(log: vscode.LogOutputChannel): LanguageClientOptions {
  return {
    // Any scheme: files, unsaved text, and what the editor opens from elsewhere.
    documentSelector: [{ language: 'layup' }],
    outputChannel: log,
    traceOutputChannel: log,
    // Numbers on screen are written as in the language of the editor.
    initializationOptions: { locale: vscode.env.language },
    // The server asks for the file events that it wants.
    synchronize: { configurationSection: 'laybook' },
    markdown: {
      isTrusted: { enabledCommands: linkCommands },
      supportHtml: false,
    },
  };
}
