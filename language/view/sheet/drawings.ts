import { planOf } from '../../../calc/drawing/plan/plan.ts';
import { sectionOf } from '../../../calc/drawing/section/section.ts';
import { isKnown } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { type Style, say, show } from '../text.ts';
import type { SheetDrawing } from './sheet.ts';

/** The drawings of a sheet; one that cannot be made is left out, and what is missing is told elsewhere. */
export function sheetDrawings(bench: Bench, style: Style): SheetDrawing[] {
  const speak = (words: Parameters<typeof show>[0]): string => show(words, style);
  const views: readonly (readonly [ReturnType<typeof planOf>, string])[] = [
    [planOf(bench, speak, { key: true }), say('With bag, tape and lines; x runs along the part.')],
    [sectionOf(bench, speak), say('From the tool up to the bag side.')],
  ];
  return views.flatMap(([figure, note]) =>
    isKnown(figure) ? [{ title: figure.value.title, note, drawing: figure.value }] : [],
  );
}
