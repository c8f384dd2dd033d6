import { isKnown } from '../../../calc/figure/figure.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { type LayerRow, type Report, reportOf } from '../../../calc/report.ts';
import type { CardFigure, LayerCard, PiecePicture } from '../../protocol/layer-card.ts';
import { layerFigureNames } from '../figure-names.ts';
import { figureOf, missingOf, reasonsOf, showFigure, showNumber } from '../figures.ts';
import { pieceWords } from '../piece-words.ts';
import { say } from '../text.ts';
import { translated } from '../translation.ts';
import { type CardBook, wireReasons } from './book.ts';
import { layerWords, stackPicture } from './stack-picture.ts';
import { nameOf, touchesOf } from './touches.ts';

/** The card of one laid layer of a recipe; none where the stack has no layer of that key. */
export function layerCard(uri: string, recipe: Recipe, key: string, book: CardBook): LayerCard | undefined {
  const shelf = book.analysis.shelf();
  const report = reportOf(recipe, shelf);
  const row = report.layers.find(({ laid }) => laid.key === key);
  if (row === undefined) return undefined;
  const { laid } = row;
  const style = book.style();
  const place = book.placeAt({ entry: recipe.entry, path: laid.path });
  const piece = pieceOf(report, row, book);
  return {
    uri,
    layer: nameOf(recipe, laid),
    title: laid.name,
    kind: say('{layer}, layer {number} of {count}', {
      layer: layerWords(laid, style),
      number: laid.index + 1,
      count: report.layers.length,
    }),
    recipe:
      recipe.size === undefined
        ? recipe.name
        : say('{recipe}, size {size}', { recipe: recipe.name, size: recipe.size }),
    summary: summaryOf(row, piece, book),
    ...(place === undefined ? {} : { place }),
    stack: stackPicture(report.layers, row, shelf, style),
    ...(piece === undefined ? {} : { piece }),
    figures: row.figures.map((figure): CardFigure => {
      const name = layerFigureNames[figure.name];
      const value = showFigure(figure, style, name?.percent);
      return {
        name: figure.name,
        label: translated(name?.label ?? figure.name),
        ...(value === undefined ? {} : { value }),
        reasons: wireReasons(reasonsOf(figure.figure), book),
      };
    }),
    missing: wireReasons([...new Set(row.figures.flatMap(({ figure }) => missingOf(figure)))], book, {
      deepest: 1,
      most: 8,
    }),
    touches: touchesOf(report.layers, row, recipe, book),
  };
}

/** One sentence: what it is, what it weighs and how thick it is. */
function summaryOf({ laid, figures }: LayerRow, piece: PiecePicture | undefined, book: CardBook): string {
  const style = book.style();
  const told = (name: string, words: (value: string) => string): string[] => {
    const value = showFigure(figureOf(figures, name), style);
    return value === undefined ? [] : [words(value)];
  };
  const facts = [
    ...told('layer_mass', (mass) => say('{mass} wet', { mass })),
    ...told('layer_thickness', (thickness) => say('{thickness} thick', { thickness })),
    ...told('layer_cost', (value) => value),
    ...(piece === undefined ? [] : [say('piece {size}', { size: piece.words })]),
  ];
  const what = `${laid.name}, ${layerWords(laid, style)}`;
  return facts.length === 0 ? say('{what}: its figures cannot be told.', { what }) : `${what}: ${facts.join(', ')}.`;
}

function pieceOf(report: Report, { piece, wrap }: LayerRow, book: CardBook): PiecePicture | undefined {
  if (piece === undefined || !isKnown(piece)) return undefined;
  const style = book.style();
  const { length, width, lanes } = piece.value;
  const size = (value: number): string => showNumber(value, LENGTH, style);
  const count = lanes?.lanes ?? 1;
  const [partLength, partWidth] = ['outline_length', 'outline_width'].map((name) => {
    const figure = figureOf(report.figures, name)?.figure;
    return figure !== undefined && isKnown(figure) ? figure.value : undefined;
  });
  return {
    length,
    width,
    ...(partLength === undefined || partWidth === undefined ? {} : { part: { length: partLength, width: partWidth } }),
    lanes: count,
    words: pieceWords(size(length), size(width), count),
    ...reachWords(piece.value.past, wrap, size),
    reasons: wireReasons(reasonsOf(piece), book),
  };
}

function reachWords(
  past: number,
  wrap: LayerRow['wrap'],
  size: (value: number) => string,
): { readonly reach?: string } {
  if (wrap !== undefined && isKnown(wrap)) {
    const { reach, landing } = wrap.value;
    return {
      reach: say('{reach} past the outline, of which {landing} land on the face', {
        reach: size(reach),
        landing: size(landing),
      }),
    };
  }
  return past > 0 ? { reach: say('{reach} past the outline', { reach: size(past) }) } : {};
}
