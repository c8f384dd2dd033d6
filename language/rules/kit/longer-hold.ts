import { equivalentTime } from '../../../calc/cure/equivalent.ts';
import type { SaidSpan } from '../../../calc/cure/spans.figure.ts';
import { text } from '../../../calc/figure/figure.ts';
import type { Fix } from '../../lower/index.ts';
import type { RecipeContext } from '../rule.ts';
import { mendText, TYPED_TIME } from './mend-text.ts';
import { asTyped, seconds } from './shown.ts';

/** The hold that cures most: the hottest, and of those the last. */
export const hottestHold = (spans: readonly SaidSpan[]): SaidSpan | undefined =>
  spans
    .filter(({ from, to }) => from === to)
    .reduce<SaidSpan | undefined>(
      (most, span) => (most === undefined || span.from >= most.from ? span : most),
      undefined,
    );

/** Lengthens the hottest hold by what is missing (s at a reference temperature, K), to the next quarter of an hour. */
export function longerHold(
  context: RecipeContext,
  spans: readonly SaidSpan[],
  missing: number,
  reference: number,
): Fix | undefined {
  const hold = hottestHold(spans);
  const speed = hold === undefined ? undefined : equivalentTime([{ ...hold, time: 1 }], reference);
  if (hold === undefined || typeof speed !== 'number' || speed <= 0) return undefined;
  const quarter = 900;
  const time = asTyped(seconds(Math.ceil((hold.time + missing / speed) / quarter - 1e-6) * quarter));
  return mendText(context, text('Hold {what}', { what: time }), hold.path, TYPED_TIME, time);
}
