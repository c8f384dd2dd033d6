import type { MaterialFacts } from '../../../calc/figure/index.ts';

/* The notation has one kind of release. Which sort it is, is told by how it is called, in the words that the trade has for it. */
const named = (material: MaterialFacts | undefined, words: RegExp): boolean =>
  material !== undefined && words.test(`${material.name.replaceAll('_', ' ')} ${material.title ?? ''}`);

export const isSemiPermanent = (material: MaterialFacts | undefined): boolean => named(material, /semi[ -]?permanent/i);
export const isWax = (material: MaterialFacts | undefined): boolean => named(material, /\bwax\b/i);
