import { planOf } from '../../../calc/drawing/plan/plan.ts';
import { isKnown } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { type Style, say, show } from '../text.ts';
import type { SheetDrawing } from './sheet.ts';

/** The drawings of a sheet; one that cannot be made is left out, and what is missing is told elsewhere. */
export function sheetDrawings(bench: Bench, style: Style): SheetDrawing[] {
  const plan = planOf(bench, (words) => show(words, style), { key: true });
  return isKnown(plan)
    ? [
        {
          title: say('The plan'),
          note: say('Seen from the bag side; x runs along the part.'),
          drawing: plan.value,
        },
      ]
    : [];
}
