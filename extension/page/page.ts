import * as vscode from 'vscode';

export interface Page {
  readonly title: string;
  /** script and style in dist: `layer-card` */
  readonly files: string;
  /** what stands in the body from the start */
  readonly body: string;
  /** words of the page in English, by their names there */
  readonly words: Readonly<Record<string, string>>;
  /** whether it draws images that it has made itself */
  readonly images?: boolean;
}

/** The frame of a page: nothing but its own script and style may run or load. */
export function pageOf(webview: vscode.Webview, extension: vscode.Uri, page: Page): string {
  const nonce = newNonce();
  const file = (ending: string): string =>
    webview.asWebviewUri(vscode.Uri.joinPath(extension, 'dist', `${page.files}.${ending}`)).toString();
  const policy = [
    "default-src 'none'",
    `style-src ${webview.cspSource}`,
    `script-src 'nonce-${nonce}'`,
    ...(page.images ? ['img-src data:'] : []),
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="${escaped(vscode.env.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(page.title)}</title>
<link rel="stylesheet" href="${escaped(file('css'))}">
</head>
<body data-words="${escaped(JSON.stringify(localised(page.words)))}">
${page.body}
<script nonce="${nonce}" src="${escaped(file('js'))}"></script>
</body>
</html>`;
}

/** What a page of ours may do. */
export const pageOptions = (extension: vscode.Uri): vscode.WebviewOptions & vscode.WebviewPanelOptions => ({
  enableScripts: true,
  enableFindWidget: true,
  localResourceRoots: [vscode.Uri.joinPath(extension, 'dist')],
});

/** Words in the language of the editor. */
export const localised = <Name extends string>(words: Readonly<Record<Name, string>>): Record<Name, string> =>
  Object.fromEntries(Object.entries<string>(words).map(([name, english]) => [name, vscode.l10n.t(english)])) as Record<
    Name,
    string
  >;

function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const marks: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => marks[mark] ?? mark);
