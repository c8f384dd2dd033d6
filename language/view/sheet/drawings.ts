import { planOf } from '../../../calc/drawing/plan/plan.ts';
import { sectionOf } from '../../../calc/drawing/section/section.ts';
import { isKnown } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { type Style, say, show } from '../text.ts';
import type { SheetDrawing } from './sheet.ts';

/** Room of a drawing on paper, m: the width of A4 or Letter between their margins, and of the height what leaves room for its words. */
const drawingRoom = { width: 0.18, height: 0.15 } as const;
/** Capitals that are read at the bench at arm's length, m: 8 pt of our letters. */
const leastCapitals = 0.0021;
/** Larger than so no letters are asked for, as a share of the part: a label would hide it. */
const mostShare = 0.09;
const usualShare = 0.022;

/** A drawing whose letters are large enough where it is printed: larger ones take room themselves, so that they are asked for anew. */
function legible(draw: (letters: number) => ReturnType<typeof planOf>): ReturnType<typeof planOf> {
  let letters = usualShare;
  for (let i = 0; ; i++) {
    const figure = draw(letters);
    if (!isKnown(figure) || i === 6) return figure;
    const { low, high, items } = figure.value;
    const scale = Math.min(1, drawingRoom.width / (high.x - low.x), drawingRoom.height / (high.y - low.y));
    const capitals = scale * Math.min(...items.flatMap((item) => (item.kind === 'text' ? [item.height] : [])));
    if (letters === mostShare || !(capitals < leastCapitals)) return figure;
    letters = Math.min(mostShare, letters * Math.max(1.02, (1.01 * leastCapitals) / capitals));
  }
}

/** The drawings of a sheet; one that cannot be made is left out, and what is missing is told elsewhere. */
export function sheetDrawings(bench: Bench, style: Style): SheetDrawing[] {
  const speak = (words: Parameters<typeof show>[0]): string => show(words, style);
  const views: readonly (readonly [ReturnType<typeof planOf>, string])[] = [
    [
      legible((letters) => planOf(bench, speak, { key: true, letters })),
      say('With bag, tape and lines; x runs along the part.'),
    ],
    [legible((letters) => sectionOf(bench, speak, { letters })), say('From the tool up to the bag side.')],
  ];
  return views.flatMap(([figure, note]) =>
    isKnown(figure) ? [{ title: figure.value.title, note, drawing: figure.value }] : [],
  );
}
