import { AstUtils, isReference, type LangiumDocument, type LeafCstNode } from 'langium';
import type { Amount, Fact, Material } from '../../../calc/model/index.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { featureOf, leafAt, targetOf } from '../leaves.ts';
import { markdownTable } from '../markdown-table.ts';
import { say, show } from '../text.ts';
import { translated } from '../translation.ts';
import type { HoverBook } from './book.ts';
import { placeLink } from './chain.ts';
import { copyLink } from './copy-link.ts';
import type { HoverText } from './hover.ts';
import { plain } from './markdown.ts';

/** A material: its values as they are typed, each with its source; those of what it is like among them. On its name, wherever it stands. */
export function materialHover(document: LangiumDocument, offset: number, book: HoverBook): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const name = leaf && materialNamed(leaf, document);
  const material = name === undefined ? undefined : book.analysis.shelf().material(name);
  return leaf === undefined || material === undefined
    ? undefined
    : { markdown: materialCard(material, book), start: leaf.offset, end: leaf.end };
}

export function materialNamed(leaf: LeafCstNode, document: LangiumDocument): string | undefined {
  const { astNode } = leaf;
  const feature = featureOf(leaf);
  if (feature === undefined) return undefined;
  if (ast.isMaterial(astNode) && feature === 'name') return astNode.name;
  const reference = (astNode as unknown as Record<string, unknown>)[feature];
  if (!isReference(reference)) return undefined;
  const target = targetOf(astNode, reference);
  // `like stock` names the entry of the same name in the library
  if (ast.isMaterial(target))
    return AstUtils.getDocument(target) === document || reference.$refText !== 'stock' ? target.name : undefined;
  return undefined;
}

function materialCard(material: Material, book: HoverBook): string {
  const rows = factsOf(material).flatMap((fact) => factRow(fact, material, book));
  const parts = [
    lead(material, book),
    rows.length === 0 ? say('Nothing is said of it.') : say('Its values and where they come from:'),
    rows.length === 0 ? '' : markdownTable({ head: [say('value'), say('source')], right: [], rows }),
    copyLink([[material.name, ''], ...rows], book),
    material.origin === 'stock'
      ? say('Typical values, for planning: the data sheet of what you buy has the last word. Prices are placeholders.')
      : '',
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function lead({ entry, kind, name, title, origin, like, notes }: Material, book: HoverBook): string {
  const named = `**${plain(name)}**${title === undefined ? '' : `, ${plain(title)},`}`;
  const what =
    origin === 'stock'
      ? say('{named} is a {kind} of the stock library', { named, kind })
      : say('{named} is a {kind} of this workspace', { named, kind });
  const alike =
    like === undefined
      ? ''
      : like === 'stock'
        ? `, ${say('like the one of that name in the stock library')}`
        : `, ${say('like {other}', { other: plain(like) })}`;
  const noted = (notes ?? []).map((note) => ` ${plain(note)}`).join('');
  return `${what}${alike}${placeLink({ entry, path: '' }, book)}.${noted}`;
}

const isFact = (value: unknown): value is Fact<unknown> =>
  typeof value === 'object' && value !== null && 'at' in value && 'value' in value;

/** All facts of a material in the order in which the model holds them; a line with several values counts once. */
function factsOf(material: Material): Fact<unknown>[] {
  const seen = new Set<string>();
  return Object.values(material)
    .flatMap((value: unknown) => (Array.isArray(value) ? value : [value]))
    .filter(isFact)
    .filter(({ at }) => {
      const key = `${at.entry} ${at.path}`;
      return seen.has(key) ? false : seen.add(key) !== undefined;
    });
}

/** The line as it is typed, with the units of the reader where these are others. */
function factRow(fact: Fact<unknown>, material: Material, book: HoverBook): string[][] {
  const line = book.textAt(fact.at);
  if (line === undefined) return [];
  const typed = line.text
    .replace(/,?\s*source\s*"[^"]*"?/, '')
    .replace(/,?\s*note\s*"[^"]*"?/, '')
    .replace(/\/\/.*$/gm, '')
    .replace(/\s+/g, ' ')
    .trim();
  const style = book.style();
  const other = style.units === 'si' || !isAmount(fact.value) ? '' : ` (${show(fact.value, style)})`;
  const inherited =
    fact.at.entry === material.entry
      ? ''
      : `${fact.at.entry.startsWith('stock/') ? say('stock library') : fact.at.entry.replace(/^\w+\//, '')}: `;
  const source =
    fact.source ??
    (inherited === '' ? material.source : undefined) ??
    (fact.at.entry.startsWith('stock/') ? say('typical, from memory') : say('typed there, no source'));
  return [[`${typed}${other}`, `${inherited}${translated(source)}`]];
}

const isAmount = (value: unknown): value is Amount =>
  typeof value === 'object' && value !== null && 'si' in value && 'dimension' in value;
