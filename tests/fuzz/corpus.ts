import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { stock } from '../../language/book/generated/stock-texts.ts';
import type { Chance } from './chance.ts';
import { chunksOf } from './chunks.ts';

const root = path.resolve(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');
const textsIn = (folder: string): string[] =>
  readdirSync(path.join(root, folder))
    .filter((name) => name.endsWith('.layup'))
    .map((name) => read(path.join(folder, name)));

const sample = {
  shop: read('extension/sample/shop.layup'),
  tools: read('extension/sample/tools.layup'),
  materials: read('extension/sample/materials.layup'),
};

/** Every recipe, material and record that there is: the sample workshop, the recipes of the tests, the stock library. */
const texts: readonly string[] = [
  ...textsIn('extension/sample'),
  ...textsIn('extension/sample/records'),
  ...textsIn('tests/recipes'),
  read('tests/language/notation-sample.layup'),
  ...Object.values(stock),
];

const chunks: readonly string[] = [...new Set(texts.flatMap(chunksOf))].filter((chunk) => /\{/.test(chunk));
const smallChunks = chunks.filter((chunk) => chunk.length < 900);
const recipes = chunks.filter((chunk) => chunk.startsWith('recipe'));
const lines: readonly string[] = [...new Set(texts.flatMap((text) => text.split('\n')))].filter(
  (line) => line.trim() !== '',
);
const words: readonly string[] = [
  ...new Set(texts.flatMap((text) => text.match(/[A-Za-z_]\w*|\d[\d.e-]*|[^\s\w]+/g) ?? [])),
];

/** The entries of the stock library. */
export const stockChunks: readonly string[] = Object.values(stock).flatMap(chunksOf);

/** Whole entries, lines and words to paste. */
export const corpus = { lines, words, chunks, smallChunks };

/** The files that a session's documents stand among: shop, tools and materials of the sample. */
export const around: Readonly<Record<string, string>> = {
  'shop.layup': sample.shop,
  'tools.layup': sample.tools,
  'materials.layup': sample.materials,
};

/** A document of a few entries: mostly short ones, one in three with a whole recipe. */
export function someChunks(chance: Chance): string[] {
  const some = Array.from({ length: 2 + chance.below(3) }, () => chance.pick(smallChunks));
  if (chance.oneIn(3)) some.splice(chance.below(some.length + 1), 0, chance.pick(recipes));
  return [...new Set(some.map((chunk) => (chunk.endsWith('\n') ? chunk : `${chunk}\n`)))];
}
