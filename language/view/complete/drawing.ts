import type { Scene } from './scene.ts';

const name = /^[A-Za-z_]\w*$/;

/** Behind `file "x.svg" layer` or `id`: what there is in the drawing. False where the cursor stands elsewhere. */
export function offerInDrawing({ before, names, offers }: Scene): boolean {
  const [word, file, pick] = before.slice(-3).map((token) => token.image);
  if (word !== 'file' || file === undefined || !/^".*"$/.test(file) || (pick !== 'layer' && pick !== 'id'))
    return false;
  const drawing = names.drawing?.(file.slice(1, -1));
  for (const label of (pick === 'layer' ? drawing?.layers : drawing?.ids) ?? [])
    offers.add({ label, sort: 'value', insert: name.test(label) ? label : `"${label.replaceAll('"', '')}"` });
  return true;
}
