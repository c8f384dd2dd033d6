import { demand, following, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Sides raised all round a base: `height` m, `draft` rad from upright, outwards; `radius` m of the corner at the base. */
export interface Upstand {
  readonly height: number;
  readonly draft: number;
  readonly radius: number;
}

/** The way up a side from the corner of the base, m: the slope, less what the radius saves, r (2 tan(b/2) - b) at a bend b. */
export function wayUp({ height, draft, radius }: Upstand): Outcome {
  const bend = Math.PI / 2 - draft;
  return given(
    [
      positive('the height of the sides', height),
      demand(draft >= 0 && draft < Math.PI / 2, 'the draft of the sides must be at least 0 and less than 90 deg'),
      notNegative('the radius at the foot of the sides', radius),
      demand(
        radius * Math.tan(bend / 2) <= height / Math.cos(draft),
        'the radius at the foot of the sides is too large for their height',
      ),
    ],
    () => height / Math.cos(draft) - radius * (2 * Math.tan(bend / 2) - bend),
  );
}

/** Area of the sides, m2: they grow outwards with the draft, by 2 pi times the run for any closed outline. */
export function upstandArea(perimeter: number, upstand: Upstand): Outcome {
  return given([positive('the length round the base', perimeter)], () =>
    following(wayUp(upstand), (way) => way * (perimeter + Math.PI * upstand.height * Math.tan(upstand.draft))),
  );
}
