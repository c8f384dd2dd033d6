import * as vscode from 'vscode';

/** The language of the editor, and the texts of the server in it by their English templates; none where it is not translated. */
export interface Translation {
  readonly locale: string;
  readonly texts?: unknown;
}

/** Reads the table that the server gets; the extension's own texts are read by the editor. */
export async function readTranslation(extension: vscode.Uri): Promise<Translation> {
  const locale = vscode.env.language;
  const [language = '', region] = locale.toLowerCase().split('-');
  // the texts in the sources are English
  if (language === 'en') return { locale };
  for (const tag of region === undefined ? [language] : [`${language}-${region}`, language]) {
    try {
      const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(extension, 'language/l10n', `${tag}.json`));
      return { locale, texts: JSON.parse(new TextDecoder().decode(bytes)) };
    } catch {
      // not translated: the server speaks English
    }
  }
  return { locale };
}
