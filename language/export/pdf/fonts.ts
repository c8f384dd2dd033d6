import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** Letters of Latin, Greek, Cyrillic and more, free to be packed and embedded (its licence goes with the package). */
const files = { regular: 'DejaVuSans.ttf', bold: 'DejaVuSans-Bold.ttf' } as const;

export type Weight = keyof typeof files;

/** Packed programs have their fonts beside them; the sources take them from the package that they come in. */
export function fontFile(weight: Weight): string {
  const beside = path.join(import.meta.dirname, 'fonts', files[weight]);
  if (existsSync(beside)) return beside;
  const manifest = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json');
  return path.join(path.dirname(manifest), 'ttf', files[weight]);
}
