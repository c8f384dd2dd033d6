import { finite, given, notNegative, type Outcome, positive } from '../outcome.ts';

/**
 * Curvature of a tool face along and across the part, 1/m: 1 / radius, positive where the face is hollow, so that what lies
 * further from it is shorter; negative where it is crowned; 0 where it is straight.
 */
export interface Curvature {
  readonly along: number;
  readonly across: number;
}

/** How much longer than on the tool face a layer is, along and across the part. */
export interface Stretch {
  readonly along: number;
  readonly across: number;
}

/**
 * Lengths at `height` (m) above a curved face against those on the face, measured square to it: 1 - h k in each direction, which
 * is (R - h) / R in a hollow and (R + h) / R on a crown. Exact for parallel surfaces (J. Steiner 1840); a cylinder rolls
 * out flat, so a ply on it is its outline made longer or shorter by this, with nothing left over.
 */
export function stretchAt({ along, across }: Curvature, height: number): Outcome<Stretch> {
  return given(
    [finite('the curvature', along), finite('the curvature', across), notNegative('the height', height)],
    () => {
      const stretch = { along: 1 - height * along, across: 1 - height * across };
      return stretch.along > 0 && stretch.across > 0
        ? stretch
        : { problem: 'the tool is hollow with a smaller radius than the stack is thick' };
    },
  );
}

/** Gaussian curvature of a face, 1/m2: what cannot be laid flat, angle for each area (C. F. Gauss 1827); 0 on a cylinder. */
export const gaussCurvature = ({ along, across }: Curvature): number => along * across;

/** Smallest radius (m) to which a sheet of thickness `thickness` bends that at `at` bends to `radius`: strain t / (2 R) stays. */
export function leastBendRadius(thickness: number, { radius, at }: { radius: number; at: number }): Outcome {
  return given(
    [
      positive('the thickness of the sheet', thickness),
      positive('the radius', radius),
      positive('the thickness that bends to it', at),
    ],
    () => (radius * thickness) / at,
  );
}

/** Saw cuts in a sheet that is bent; metres. `radius` is that of the bottom of the cuts, which keeps its length. */
export interface BentCuts {
  readonly pitch: number;
  readonly width: number;
  readonly depth: number;
  readonly radius: number;
}

/**
 * How much wider (or, where they lie on the inside of the bend, narrower) each cut is at its mouth, m: between two cuts the sheet
 * turns by pitch / R about the bottom of the cut, so its mouth moves by depth pitch / R.
 */
export function cutMovement({ pitch, depth, radius }: Omit<BentCuts, 'width'>): Outcome {
  return given(
    [
      positive('the distance between cuts', pitch),
      positive('the depth of the cuts', depth),
      positive('the radius', radius),
    ],
    () => (depth * pitch) / radius,
  );
}

/** The radius (m) at which cuts on the inside of a bend have closed, and the sheet goes no further: depth pitch / width. */
export function closedCutRadius({ pitch, width, depth }: Omit<BentCuts, 'radius'>): Outcome {
  return given(
    [
      positive('the distance between cuts', pitch),
      positive('the width of the cuts', width),
      positive('the depth of the cuts', depth),
    ],
    () => (depth * pitch) / width,
  );
}

/**
 * Volume that cuts gain for each m2 as they open, m3/m2: a wedge of depth d and mouth d p / R every p, so d2 / (2 R), whatever the
 * distance between them. They lose as much where they close, down to nothing.
 */
export function cutOpening(depth: number, radius: number): Outcome {
  return given(
    [notNegative('the depth of the cuts', depth), positive('the radius', radius)],
    () => (depth * depth) / (2 * radius),
  );
}
