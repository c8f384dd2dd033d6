import { count, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Money for work: hands-on `time` (s) of `people` at `wage` (money per second and person). */
export function labourCost(time: number, wage: number, people = 1): Outcome {
  return given(
    [notNegative('the working time', time), notNegative('the wage', wage), count('the number of people', people)],
    () => time * wage * people,
  );
}

/** Working time (s) for an area (m2) at a speed of work (m2/s). */
export function timeForArea(area: number, speed: number): Outcome {
  return given([notNegative('the area', area), positive('the speed of work', speed)], () => area / speed);
}
