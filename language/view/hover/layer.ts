import type { LangiumDocument, LeafCstNode } from 'langium';
import { isKnown, quantity, type Reason } from '../../../calc/figure/figure.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { flatPiecesOf } from '../../../calc/piece/flat-pieces.figure.ts';
import { LENGTH, MASS } from '../../../calc/quantity/index.ts';
import { type LayerRow, reportOf } from '../../../calc/report.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { layerFigureNames } from '../figure-names.ts';
import { figureOf, missingOf, reasonsOf, showFigure } from '../figures.ts';
import { featureOf, leafAt, targetOf } from '../leaves.ts';
import { markdownTable } from '../markdown-table.ts';
import { pieceWords } from '../piece-words.ts';
import { say, show } from '../text.ts';
import { translated } from '../translation.ts';
import type { HoverBook } from './book.ts';
import { chainText, missingText } from './chain.ts';
import { copyLink } from './copy-link.ts';
import type { HoverText } from './hover.ts';
import { plain } from './markdown.ts';
import { piecePicture } from './piece-picture.ts';
import { planLink } from './plan-link.ts';
import { recipeAround } from './recipe-of.ts';
import { wordHover } from './word.ts';

type LayerNode = ast.ClothLayer | ast.CoatLayer | ast.CoreLayer;

/** A layer: its piece, masses, thickness, share and cost, and how they were come by. On its first word and its name, wherever it stands. */
export function layerHover(document: LangiumDocument, offset: number, book: HoverBook): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const line = leaf && layerLineOf(leaf);
  const found = line && recipeAround(line, book);
  if (leaf === undefined || line === undefined || found === undefined) return undefined;
  const at = line.$cstNode?.offset;
  const rows = reportOf(found.recipe, book.analysis.shelf()).layers.filter(
    ({ laid }) => found.lowered.places.get(laid.path)?.offset === at,
  );
  const [first] = rows;
  if (first === undefined) return undefined;
  const word = leaf.offset === at ? wordHover(document, offset) : undefined;
  return {
    markdown: [
      layerCard(rows, first, book),
      ...pictures(found.recipe, first, book),
      ...(word === undefined ? [] : ['---', word.markdown]),
    ].join('\n\n'),
    start: leaf.offset,
    end: leaf.end,
  };
}

/** The line that heads with this word or bears this name, or the one that a name speaks of. */
export function layerLineOf(leaf: LeafCstNode): LayerNode | undefined {
  const { astNode } = leaf;
  const feature = featureOf(leaf);
  if (isLayer(astNode)) return feature === 'kind' || feature === 'name' ? astNode : undefined;
  const target = feature === undefined ? undefined : (astNode as unknown as Record<string, unknown>)[feature];
  const reference = target as { readonly $refText?: string } | undefined;
  if (typeof reference !== 'object' || reference === null || reference.$refText === undefined) return undefined;
  const node = targetOf(astNode, reference as Parameters<typeof targetOf>[1]);
  return node !== undefined && isLayer(node) ? node : undefined;
}

const isLayer = (node: { readonly $type: string }): node is LayerNode =>
  ast.isClothLayer(node) || ast.isCoatLayer(node) || ast.isCoreLayer(node);

/** The piece as a picture, and the way to the plan. */
function pictures(recipe: Recipe, row: LayerRow, book: HoverBook): string[] {
  const { laid } = row;
  const pieces = laid.layer.kind === 'coat' ? undefined : book.analysis.bench(recipe).ask(flatPiecesOf, laid.key);
  const size = pieceRow(row, book)[0]?.[1] ?? '';
  const at = book.analysis.locate({ entry: recipe.entry, path: laid.path });
  return [
    pieces !== undefined && isKnown(pieces) ? piecePicture(pieces.value, size, book) : '',
    at === undefined ? '' : planLink(at.uri, recipe, book),
  ].filter((part) => part !== '');
}

function layerCard(rows: readonly LayerRow[], first: LayerRow, book: HoverBook): string {
  const style = book.style();
  const missing = [...new Set(first.figures.flatMap(({ figure }) => missingOf(figure)))];
  const table = first.figures.map((row) => {
    const name = layerFigureNames[row.name];
    return [translated(name?.label ?? row.name), showFigure(row, style, name?.percent) ?? say('cannot tell')];
  });
  const told = [...pieceRow(first, book), ...table];
  const parts = [
    lead(rows, first, book),
    markdownTable({ head: [say('figure'), say('value')], right: [1], rows: told }),
    copyLink([[first.laid.name, ''], ...told], book),
    missingText(missing, book),
    ...how(
      'The wet mass is computed so:',
      reasonsOf(figureOf(first.figures, 'layer_mass')?.figure ?? { pending: true }),
      book,
    ),
    ...how('The piece is computed so:', reasonsOf(first.piece ?? { pending: true }), book),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function lead(rows: readonly LayerRow[], { laid, figures }: LayerRow, book: HoverBook): string {
  const style = book.style();
  const wet = showFigure(figureOf(figures, 'layer_mass'), style);
  const share = showFigure(figureOf(figures, 'layer_share'), style, true);
  const { kind, material } = laid.layer;
  const names = { name: plain(laid.name), kind, material: plain(material ?? '') };
  const what =
    material === undefined ? say('**{name}** is a {kind}', names) : say('**{name}** is a {kind} of {material}', names);
  const weighs = weighsWords(wet, share);
  if (rows.length === 1) return `${what}; ${weighs}`;
  const masses = rows.map((row) => figureOf(row.figures, 'layer_mass')?.figure);
  const total = masses.reduce<number | undefined>(
    (sum, mass) => (sum === undefined || mass === undefined || !isKnown(mass) ? undefined : sum + mass.value),
    0,
  );
  const laidOften = say('{what}, laid {count} times; the figures are those of {name}', {
    what,
    count: rows.length,
    name: names.name,
  });
  const all =
    total === undefined
      ? ''
      : ` ${say('All {count} together weigh {total}.', { count: rows.length, total: plain(show(quantity(total, MASS), style)) })}`;
  return `${laidOften}; ${weighs}${all}`;
}

function weighsWords(wet: string | undefined, share: string | undefined): string {
  if (wet === undefined) return say('what it weighs cannot be told.');
  return share === undefined
    ? say('it weighs {wet} wet.', { wet: plain(wet) })
    : say('it weighs {wet} wet, {share} of the part.', { wet: plain(wet), share: plain(share) });
}

function pieceRow({ piece }: LayerRow, book: HoverBook): string[][] {
  if (piece === undefined || !isKnown(piece)) return [];
  const style = book.style();
  const { length, width, lanes } = piece.value;
  const [along = '', across = ''] = [length, width].map((side) => show(quantity(side, LENGTH), style));
  return [[say('piece to cut'), pieceWords(along, across, lanes?.lanes ?? 1)]];
}

function how(what: string, reasons: readonly Reason[], book: HoverBook): string[] {
  const chain = chainText(reasons, book);
  return chain === '' ? [] : [`${translated(what)}\n\n${chain}`];
}
