import * as vscode from 'vscode';
import type { Server } from '../status-item.ts';

/** What the report tells beside the state of the editor. */
export interface Facts {
  readonly version: string;
  readonly server: Server;
  /** time that the extension took to start, s */
  readonly activation: number;
}

/** States of the server by the numbers of vscode-languageclient. */
const states: Readonly<Record<number, string>> = { 1: 'stopped', 2: 'running', 3: 'starting' };

/** Settings of ours that hold no text of a recipe: switches, units, severities by the names of rules. */
function settings(): readonly string[] {
  const own = vscode.workspace.getConfiguration('laybook');
  const walk = (value: unknown, name: string): string[] =>
    typeof value === 'object' && value !== null && name !== 'severities'
      ? Object.entries(value).flatMap(([key, each]) => walk(each, name === '' ? key : `${name}.${key}`))
      : [`- laybook.${name}: ${JSON.stringify(value)}`];
  const known = Object.fromEntries(['severities', 'units', 'hints', 'lens'].map((key) => [key, own.get(key)]));
  return walk(known, '');
}

/** Findings by rule, the most frequent first. Their words are left out: they quote names from recipes. */
function findings(): readonly string[] {
  const names = vscode.languages
    .getDiagnostics()
    .flatMap(([, all]) => all)
    .filter(({ source }) => source === 'laybook')
    .map(({ code }) => String(typeof code === 'object' ? code.value : code));
  const counts = [...Map.groupBy(names, (name) => name)].map(([name, all]) => ({ name, count: all.length }));
  return counts.sort((a, b) => b.count - a.count).map(({ name, count }) => `- ${name}: ${count}`);
}

/** How long the server takes to answer for the outline of the file that is looked at, s; nothing where none is. */
async function answerTime(): Promise<number | undefined> {
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId !== 'layup') return undefined;
  const started = performance.now();
  await vscode.commands.executeCommand('vscode.executeDocumentSymbolProvider', document.uri);
  return (performance.now() - started) / 1000;
}

const ms = (seconds: number | undefined): string =>
  seconds === undefined ? 'not measured' : `${Math.round(seconds * 1000)} ms`;

/** The state of the extension as text for a report of a fault; in English, without text, names or addresses of recipes. */
export async function diagnosticReport({ version, server, activation }: Facts): Promise<string> {
  const open = vscode.workspace.textDocuments.filter(({ languageId }) => languageId === 'layup');
  const folders = vscode.workspace.workspaceFolders ?? [];
  const schemes = [...new Set(folders.map(({ uri }) => uri.scheme))].join(', ') || 'none';
  const found = findings();
  return [
    '# Laybook diagnostic report',
    '',
    `- Laybook: ${version}`,
    `- Editor: ${vscode.env.appName} ${vscode.version}, ${vscode.env.appHost}, language ${vscode.env.language}`,
    `- Remote: ${vscode.env.remoteName ?? 'no'}`,
    `- Platform: ${typeof process === 'undefined' ? 'browser' : `${process.platform} ${process.arch}, Node ${process.versions.node}`}`,
    `- Server: ${states[server.state] ?? 'unknown'}`,
    `- Folders: ${folders.length} (${schemes}), trusted: ${vscode.workspace.isTrusted ? 'yes' : 'no'}`,
    `- Open recipe files: ${open.length}, lines: ${open.reduce((sum, { lineCount }) => sum + lineCount, 0)}`,
    `- Extension started in: ${ms(activation)}`,
    `- Server answered in: ${ms(await answerTime())}`,
    '',
    '## Settings',
    '',
    ...settings(),
    '',
    '## Findings by rule',
    '',
    ...(found.length > 0 ? found : ['- none']),
    '',
  ].join('\n');
}

/** Copies the report for whoever wants to tell of a fault. */
export async function copyDiagnosticReport(facts: Facts): Promise<void> {
  await vscode.env.clipboard.writeText(await diagnosticReport(facts));
  await vscode.window.showInformationMessage(
    vscode.l10n.t('The diagnostic report is on the clipboard. It holds no text of your recipes.'),
  );
}
