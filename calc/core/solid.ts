import { demand, given, notNegative, type Outcome, positive } from '../outcome.ts';

/**
 * Volume of a sheet whose sides slope (m3) from its areas (m2) at the toe, half way up and at the top: h/6 (A0 + 4 Am + A1), exact
 * for straight slopes (prismatoid; Newton's and Simpson's rule).
 */
export function prismatoid(toe: number, middle: number, top: number, height: number): Outcome {
  return given(
    [
      notNegative('the area at the toe', toe),
      notNegative('the area half way up', middle),
      notNegative('the area at the top', top),
      positive('the height', height),
    ],
    () => (height / 6) * (toe + 4 * middle + top),
  );
}

/** How far a chamfer of `angle` (rad from the face) runs in over a height (m). */
export function chamferRun(angle: number, height: number): Outcome {
  return given(
    [
      demand(angle > 0 && angle <= Math.PI / 2, 'the chamfer must be more than 0 and at most 90 deg'),
      positive('the thickness', height),
    ],
    () => (angle === Math.PI / 2 ? 0 : height / Math.tan(angle)),
  );
}
