import { AstUtils, type LangiumDocument } from 'langium';
import { quantity, type Text } from '../../../calc/figure/index.ts';
import { contourArea, contourBox, contourPerimeter } from '../../../calc/outline/contour-measure.ts';
import { isTaken, takenFrom } from '../../../calc/outline/drawn.figure.ts';
import { AREA, LENGTH } from '../../../calc/quantity/index.ts';
import type { ReadDrawing } from '../../../calc/read-drawing/drawn.ts';
import { drawingFile } from '../../book/drawing-files.ts';
import * as ast from '../../grammar/generated/ast.ts';
import { sizeWords } from '../hints/of-drawn.ts';
import { leafAt } from '../leaves.ts';
import { say, sayText, show } from '../text.ts';
import type { HoverBook } from './book.ts';
import type { HoverText } from './hover.ts';
import { plain } from './markdown.ts';

/** The name of a drawing, or the layer that is picked of it: what was found there, how large it is, and what else there is. */
export function drawingHover(document: LangiumDocument, offset: number, book: HoverBook): HoverText | undefined {
  const leaf = leafAt(document, offset);
  const shape = leaf?.astNode;
  if (leaf === undefined || !ast.isFileShape(shape) || !/^"/.test(leaf.text)) return undefined;
  const address = drawingFile(AstUtils.getDocument(shape).uri, shape.file)?.toString();
  const found = address === undefined ? undefined : book.analysis.shelf().drawing(address);
  if (found === undefined) return undefined;
  const told = 'missing' in found ? [line(found.missing, book)] : card(found.drawing, shape, book);
  return {
    markdown: [`**${plain(shape.file)}**`, ...told].join('\n\n'),
    start: leaf.offset,
    end: leaf.end,
  };
}

function card(drawing: ReadDrawing, { file, pick, what }: ast.FileShape, book: HoverBook): string[] {
  const style = book.style();
  const name = what?.replace(/^"|"$/g, '');
  const taken = takenFrom(drawing, {
    kind: 'file',
    file,
    ...(pick === undefined || name === undefined ? {} : { [pick]: name }),
  });
  return [
    ...(isTaken(taken) ? sizes(taken.picked.contour, book) : [line(taken.message, book)]),
    say('One unit of the drawing is {unit}.', { unit: drawing.unit.name }),
    ...(drawing.joinedOver < 1e-6
      ? []
      : [say('Ends of lines up to {gap} apart were joined.', { gap: quantity(drawing.joinedOver, LENGTH) }, style)]),
    ...(drawing.layers.length === 0 ? [] : [plain(say('Layers: {layers}.', { layers: drawing.layers.join(', ') }))]),
    ...drawing.problems.slice(0, 5).map(({ message }) => line(message, book)),
  ];
}

function sizes(contour: Parameters<typeof contourBox>[0], book: HoverBook): string[] {
  const style = book.style();
  const [low, high] = contourBox(contour);
  const arcs = contour.filter(({ bulge }) => bulge !== undefined).length;
  const size = sizeWords({ length: high.x - low.x, width: high.y - low.y }, style);
  return [
    `**${plain(size)}**`,
    say(
      'Area {area}, {way} round, {straights} straights and {arcs} arcs.',
      {
        area: show(quantity(contourArea(contour), AREA), style),
        way: show(quantity(contourPerimeter(contour), LENGTH), style),
        straights: contour.length - arcs,
        arcs,
      },
      style,
    ),
  ];
}

const line = (message: Text, book: HoverBook): string => plain(sayText(message, book.style()));
