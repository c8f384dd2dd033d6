import { count, following, given, notNegative, type Outcome, positive } from '../outcome.ts';
import { type Pleats, pleatPairs } from './pleats.ts';

/** A flat bag, tape to tape; metres. */
export interface BagSpan {
  readonly length: number;
  readonly width: number;
  /** of all that lies under the film, above the flange */
  readonly stackHeight: number;
  /** film outside the inner edge of the tape, on each side */
  readonly hem: number;
}

/** Film to cut. */
export interface BagFilm {
  readonly length: number;
  readonly width: number;
  readonly area: number;
}

/**
 * Film for a flat bag: from tape to tape, up and down the stack, twice the height of each pleat and a hem on both
 * sides. The girth over the stack alone is what must fit; what the pleats give beyond 2 h lies slack.
 */
export function bagFilm(span: BagSpan, pleats: Pleats): Outcome<BagFilm> {
  return given(
    [
      positive('the length of the bag', span.length),
      positive('the width of the bag', span.width),
      notNegative('the height of the stack', span.stackHeight),
      notNegative('the hem', span.hem),
      notNegative('the height of a pleat', pleats.height),
    ],
    () =>
      following(pleatPairs(pleats.count, span.length, span.width), (pairs) => {
        const over = 2 * span.stackHeight;
        const length = span.length + Math.max(over, 2 * pleats.height * pairs.along) + 2 * span.hem;
        const width = span.width + Math.max(over, 2 * pleats.height * pairs.across) + 2 * span.hem;
        return { length, width, area: length * width };
      }),
  );
}

/** Sealant tape (m): the way round and, up and down each pleat, twice its height. */
export function tapeLength(perimeter: number, pleats: Pleats): Outcome {
  return given(
    [
      positive('the way round the bag', perimeter),
      count('the number of pleats', pleats.count, 0),
      notNegative('the height of a pleat', pleats.height),
    ],
    () => perimeter + 2 * pleats.count * pleats.height,
  );
}
