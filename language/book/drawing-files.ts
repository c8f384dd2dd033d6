import { type URI, UriUtils } from 'langium';

/** The files, beside recipes, whose changes reach a recipe. */
export const isDrawing = (uri: URI): boolean => /\.(svg|dxf)$/i.test(uri.path);

/**
 * The address of a file that a recipe names, relative to the recipe's file; `undefined` where it is no drawing or the text is
 * no relative path. Whether it may be read is asked by whoever reads it.
 */
export function drawingFile(recipe: URI, file: string | undefined): URI | undefined {
  if (file === undefined || file === '' || /^[\\/]|^[a-z]+:|\0/i.test(file)) return undefined;
  const uri = UriUtils.joinPath(UriUtils.dirname(recipe), file);
  return isDrawing(uri) ? uri : undefined;
}
