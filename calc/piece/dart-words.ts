import { type Text, text } from '../figure/figure.ts';

export const dartWords = (darts: number): Text => (darts === 1 ? text('1 dart') : text('{darts} darts', { darts }));
const slitWords = (slits: number): Text => (slits === 1 ? text('1 slit') : text('{slits} slits', { slits }));

/** `3 darts and 1 slit`: what is cut into a piece; none where it is whole. */
export function cutInWords(darts: number, slits: number): Text | undefined {
  if (darts > 0 && slits > 0) return text('{darts} and {slits}', { darts: dartWords(darts), slits: slitWords(slits) });
  if (slits > 0) return slitWords(slits);
  return darts > 0 ? dartWords(darts) : undefined;
}
