import type { Reason } from '../../../calc/figure/figure.ts';
import type { Place } from '../../../calc/model/index.ts';
import type { WirePlace, WireReason } from '../../protocol/place.ts';
import type { HoverBook } from '../hover/book.ts';
import { type Depth, type Said, saidReasons } from '../reasons.ts';

/** What views ask that hand out plain data: hovers' questions, and where things stand. */
export interface CardBook extends HoverBook {
  placeAt(place: Place): WirePlace | undefined;
}

/** A card has room, and its chains are folded. */
const whole: Depth = { deepest: 8, most: 60 };

/** A chain of reasons in words, with the places that it speaks of. */
export function wireReasons(reasons: readonly Reason[], book: CardBook, depth: Depth = whole): WireReason[] {
  const wired = (list: readonly Said[]): WireReason[] =>
    list.map(({ words, source, at, reasons: under }) => {
      const place = at && book.placeAt(at);
      return {
        words,
        ...(source === undefined ? {} : { source }),
        ...(place === undefined ? {} : { at: place }),
        reasons: wired(under),
      };
    });
  return wired(saidReasons(reasons, book.style(), depth));
}
