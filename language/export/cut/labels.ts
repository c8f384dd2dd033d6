import type { Label } from '../../../calc/drawing/of-piece.ts';
import { quantity, type Shown, type Text, text } from '../../../calc/figure/figure.ts';
import type { Recipe } from '../../../calc/model/index.ts';
import type { FlatPiece } from '../../../calc/piece/flat-piece.ts';
import { allSteps, hasWord, head } from '../../../calc/plan/reading.ts';
import { LENGTH } from '../../../calc/quantity/index.ts';
import { cutsLaidWords } from '../../view/piece-words.ts';
import { type Style, say } from '../../view/text.ts';

/** A length of cloth in whole millimetres or the reader's units. */
const length = (metres: number): Shown => quantity(metres, LENGTH);

/** `sled_deck`, `sled_deck, size short, revision 4`: what a piece is for, however it comes off the table. */
export function recipeWords({ name, size, revision }: Recipe): string {
  const figures = { name, size: size ?? '', revision: revision ?? 0 };
  if (size !== undefined && revision !== undefined) return say('{name}, size {size}, revision {revision}', figures);
  if (size !== undefined) return say('{name}, size {size}', figures);
  return revision === undefined ? say('{name}', figures) : say('{name}, revision {revision}', figures);
}

const sizeText = (piece: FlatPiece): Text =>
  text('{length} by {width}', { length: length(piece.length), width: length(piece.width) });

/** What stands on a piece: its name, of what and how many, what it is for, how large it is, and what is easily got wrong. */
export function labelOf(piece: FlatPiece, recipe: Recipe, count: number, style: Style): Label {
  const { material, lane } = piece;
  return [
    say('{name}', { name: piece.name }),
    material === undefined ? say('cut {count}', { count }) : say('{material}, cut {count}', { material, count }),
    recipeWords(recipe),
    say('{size}', { size: sizeText(piece) }, style),
    ...(lane === undefined
      ? []
      : [say('lane {number} of {of}, laps {lap}', { number: lane.number, of: lane.of, lap: length(lane.lap) }, style)]),
    ...cutsLaidWords(piece, style),
    ...(isScoredUnsaid(piece, recipe) ? [say('scored by a step: how wide and how far apart is not written')] : []),
    ...(piece.faceUp ? [] : [say('turned over when it is laid')]),
  ];
}

/** Whether a step scores a core of which no line says how: there is no grid to draw. */
function isScoredUnsaid({ kind, of, marks }: FlatPiece, { process }: Recipe): boolean {
  if (kind !== 'core' || process === undefined || marks.some((mark) => mark.kind === 'score')) return false;
  return allSteps(process.steps).some((step) => step.verb === 'score' && hasWord(head(step), of));
}

/** `1262 mm by 502 mm, cut 2 of triax_680` */
export function pieceWords(piece: FlatPiece, count: number, style: Style): string {
  const size = sizeText(piece);
  return piece.material === undefined
    ? say('{size}, cut {count}', { size, count }, style)
    : say('{size}, cut {count} of {material}', { size, count, material: piece.material }, style);
}

/** `9 pieces, 3214 mm at a width of 1270 mm` */
export function materialWords(count: number, used: number, width: number | undefined, style: Style): string {
  const figures = { count, used: length(used), width: length(width ?? 0) };
  if (count === 1)
    return width === undefined
      ? say('1 piece, {used} in a row; how wide the material comes is not known', figures, style)
      : say('1 piece, {used} at a width of {width}', figures, style);
  return width === undefined
    ? say('{count} pieces, {used} in a row; how wide the material comes is not known', figures, style)
    : say('{count} pieces, {used} at a width of {width}', figures, style);
}
