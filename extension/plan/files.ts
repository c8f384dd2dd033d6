import * as vscode from 'vscode';
import { fromBase64 } from '../../language/protocol/base64.ts';
import {
  type DrawingFileParams,
  type DrawingFileResult,
  type DrawingFormat,
  drawingFileRequest,
  type Picture,
} from '../../language/protocol/drawing.ts';
import { ask, type Server } from '../server.ts';
import type { SaveFormat } from './messages.ts';

const kinds = (): Readonly<Record<SaveFormat, string>> => ({
  svg: vscode.l10n.t('SVG drawing'),
  png: vscode.l10n.t('PNG image'),
  pdf: vscode.l10n.t('PDF page'),
  dxf: vscode.l10n.t('DXF drawing'),
});

/** What the server makes of a picture; undefined, and a word to the reader, where it makes nothing. */
export async function madeBy(
  server: Server,
  { uri, view, recipe }: Picture,
  format: DrawingFormat,
  without: readonly string[],
): Promise<DrawingFileResult | undefined> {
  const params: DrawingFileParams = { uri, view, recipe, format, without };
  const made = await ask<DrawingFileResult>(server, drawingFileRequest, params);
  if (made.nothing === undefined) return made;
  void vscode.window.showWarningMessage(made.nothing);
  return undefined;
}

/** Asks where to, and writes. */
export async function saveAs(picture: Picture, format: SaveFormat, bytes: Uint8Array): Promise<void> {
  const { recipe, size } = picture.recipe;
  const name = [recipe, ...(size === undefined ? [] : [size]), picture.view].join('-');
  const beside = vscode.Uri.joinPath(vscode.Uri.parse(picture.uri), '..', `${name}.${format}`);
  const to = await vscode.window.showSaveDialog({
    defaultUri: beside,
    filters: { [kinds()[format]]: [format] },
  });
  if (to === undefined) return;
  await vscode.workspace.fs.writeFile(to, bytes);
  vscode.window.setStatusBarMessage(
    vscode.l10n.t('{0} was written.', to.path.slice(to.path.lastIndexOf('/') + 1)),
    4000,
  );
}

export const bytesOf = ({ text, base64 }: Pick<DrawingFileResult, 'text' | 'base64'>): Uint8Array =>
  base64 === undefined ? new TextEncoder().encode(text ?? '') : fromBase64(base64);
