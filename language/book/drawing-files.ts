import { type URI, UriUtils } from 'langium';

/** The files, beside recipes, whose changes reach a recipe. */
export const isDrawing = (uri: URI): boolean => /\.(svg|dxf)$/i.test(uri.path);

/** Names that are no files on Windows, with any ending: `con.svg` is the console. */
const device = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

/**
 * Whether a text can be the path of a drawing relative to a recipe: no address, no other computer, nothing written in a way that
 * would be read otherwise. Where it leads is asked by whoever reads it.
 */
export function isDrawingPath(file: string): boolean {
  if (file === '' || file.length > 500 || /^[\\/~]|[:\0-\x1f*?"<>|]|%[0-9a-f]{2}/i.test(file)) return false;
  return file.split(/[\\/]/).every((part) => !device.test(part.trim()));
}

/** The address of a drawing that a recipe names, relative to the recipe's file; `undefined` where it is no path of a drawing. */
export function drawingFile(recipe: URI, file: string | undefined): URI | undefined {
  if (file === undefined || !isDrawingPath(file)) return undefined;
  const uri = UriUtils.joinPath(UriUtils.dirname(recipe), file.replaceAll('\\', '/'));
  return isDrawing(uri) ? uri : undefined;
}

/** Whether an address lies in a folder, by its text alone. */
export function liesIn(folder: URI, uri: URI): boolean {
  if (folder.scheme !== uri.scheme || folder.authority !== uri.authority) return false;
  const base = folder.path.endsWith('/') ? folder.path : `${folder.path}/`;
  return uri.path.startsWith(base) && !uri.path.split('/').includes('..');
}
