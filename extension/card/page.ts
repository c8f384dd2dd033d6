import * as vscode from 'vscode';
import { type Words, words } from './webview/words.ts';

/** The frame of the page: nothing but its own script and style may run or load. */
export function pageOf(webview: vscode.Webview, extension: vscode.Uri): string {
  const nonce = newNonce();
  const file = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(extension, 'dist', name)).toString();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="${escaped(vscode.env.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(vscode.l10n.t('Layer card'))}</title>
<link rel="stylesheet" href="${escaped(file('layer-card.css'))}">
</head>
<body data-words="${escaped(JSON.stringify(localised()))}">
<div id="aloud" role="status" aria-live="polite"></div>
<div id="card"></div>
<script nonce="${nonce}" src="${escaped(file('layer-card.js'))}"></script>
</body>
</html>`;
}

/** Words of the page in the language of the editor. */
function localised(): Words {
  return Object.fromEntries(Object.entries(words).map(([name, english]) => [name, vscode.l10n.t(english)])) as Words;
}

function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const marks: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => marks[mark] ?? mark);
