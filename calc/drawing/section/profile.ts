import type { Point } from '../../outline/shape.ts';

/** The upper side of what lies already, as straights from left to right: each from height `z0` to `z1`; m. */
export type Profile = readonly Straight[];
interface Straight {
  readonly from: number;
  readonly to: number;
  readonly z0: number;
  readonly z1: number;
}

/** A stretch of the section line, m. */
export type Stretch = readonly [number, number];

export const flatFrom = (from: number, to: number): Profile => [{ from, to, z0: 0, z1: 0 }];

/** Places nearer than this are one, m. */
const apart = 1e-9;

const heightIn = ({ from, to, z0, z1 }: Straight, x: number): number =>
  to - from < apart ? z1 : z0 + ((z1 - z0) * (x - from)) / (to - from);

function splitAt(profile: Profile, x: number): Profile {
  return profile.flatMap((straight): Straight[] => {
    if (x <= straight.from + apart || x >= straight.to - apart) return [straight];
    const z = heightIn(straight, x);
    return [
      { ...straight, to: x, z1: z },
      { ...straight, from: x, z0: z },
    ];
  });
}

export interface Laid {
  readonly profile: Profile;
  /** counter-clockwise, thickness as it is */
  readonly shape: readonly Point[];
}

/** What lies on a stretch, and the profile with it on top. It rises to its thickness over `slope` (m) from both ends. */
export function laidOn(profile: Profile, [from, to]: Stretch, thickness: number, slope = 0): Laid {
  const cut = [from, to, from + slope, to - slope].reduce(splitAt, profile);
  const isInside = (straight: Straight): boolean => straight.from >= from - apart && straight.to <= to + apart;
  const thick = (x: number): number =>
    slope < apart ? thickness : thickness * Math.max(0, Math.min(1, (x - from) / slope, (to - x) / slope));
  const raised = cut.map((straight) =>
    isInside(straight)
      ? { ...straight, z0: straight.z0 + thick(straight.from), z1: straight.z1 + thick(straight.to) }
      : straight,
  );
  const upper = raised.filter(isInside);
  return { profile: raised, shape: [...lineOf(cut.filter(isInside)), ...lineOf(upper).reverse()] };
}

const lineOf = (straights: Profile): Point[] =>
  straights.flatMap(({ from, to, z0, z1 }) => [
    { x: from, y: z0 },
    { x: to, y: z1 },
  ]);

/** The height at a place, m. */
export function heightAt(profile: Profile, x: number): number {
  const at = profile.find(({ from, to }) => from - apart <= x && x <= to + apart);
  return at === undefined ? 0 : heightIn(at, x);
}

/** The highest place, m. */
export const topOf = (profile: Profile): number => profile.reduce((top, { z0, z1 }) => Math.max(top, z0, z1), 0);

/** On a stretch at least so high, m. */
export const levelled = (profile: Profile, [from, to]: Stretch, least: number): Profile =>
  [from, to]
    .reduce(splitAt, profile)
    .map((straight) =>
      straight.from >= from - apart && straight.to <= to + apart
        ? { ...straight, z0: Math.max(straight.z0, least), z1: Math.max(straight.z1, least) }
        : straight,
    );

/** What of a stretch is left beside others. */
export function without(stretch: Stretch, others: readonly Stretch[]): readonly Stretch[] {
  return others.reduce<readonly Stretch[]>(
    (left, [low, high]) =>
      left.flatMap(([from, to]): Stretch[] => {
        const parts: Stretch[] = [
          [from, Math.min(to, low)],
          [Math.max(from, high), to],
        ];
        return parts.filter(([a, b]) => b - a > apart);
      }),
    [stretch],
  );
}
