import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** Letters of Latin, Greek, Cyrillic and more, free to be packed and embedded (its licence goes with the package). */
const files = { regular: 'DejaVuSans.ttf', bold: 'DejaVuSans-Bold.ttf' } as const;

export type Weight = keyof typeof files;
export const weights: readonly Weight[] = ['regular', 'bold'];

const found = new Map<Weight, string>();

/** Packed programs have their fonts beside them; the sources take them from the package that they come in. */
export function fontFile(weight: Weight): string {
  const file = found.get(weight) ?? lookedFor(weight);
  found.set(weight, file);
  return file;
}

function lookedFor(weight: Weight): string {
  const beside = path.join(import.meta.dirname, 'fonts', files[weight]);
  if (existsSync(beside)) return beside;
  const manifest = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json');
  return path.join(path.dirname(manifest), 'ttf', files[weight]);
}

/** Files of fonts that stand in for ours. */
export type FontFiles = Partial<Readonly<Record<Weight, string>>>;

const chosen = new WeakMap<object, FontFiles>();

/** Another font for a document: for letters that ours lack. Without a bold one, its regular one stands for both. */
export const useFonts = (doc: object, files: FontFiles): void => void chosen.set(doc, files);

export function fontOf(doc: object, weight: Weight): string {
  const own = chosen.get(doc);
  return own?.[weight] ?? own?.regular ?? fontFile(weight);
}
