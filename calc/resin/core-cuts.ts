import { count, demand, given, notNegative, type Outcome, positive } from '../outcome.ts';

/** Holes through a core on a square grid. */
export interface Perforation {
  readonly holes: number;
  /** m3 of all holes together */
  readonly volume: number;
}

/** Holes of `diameter` (m) every `pitch` (m) both ways through a core of `thickness` (m) over `area` (m2). */
export function perforation(area: number, diameter: number, pitch: number, thickness: number): Outcome<Perforation> {
  return given(
    [
      notNegative('the area of the core', area),
      positive('the diameter of the holes', diameter),
      positive('the distance between holes', pitch),
      positive('the thickness of the core', thickness),
      demand(pitch > diameter, 'the holes run into each other: they are wider than the distance between them'),
    ],
    () => {
      const holes = Math.round(area / (pitch * pitch));
      const volume = (holes * Math.PI * diameter * diameter * thickness) / 4;
      return Number.isSafeInteger(holes) ? { holes, volume } : { problem: 'these are more holes than can be counted' };
    },
  );
}

/** Saw cuts into a core: `ways` 1 for parallel cuts, 2 for a square grid; metres. */
export interface Kerfs {
  readonly pitch: number;
  readonly width: number;
  readonly depth: number;
  readonly ways: 1 | 2;
}

/**
 * Volume of the cuts for each m2 of a core that lies flat, m3/m2: (2 k/p - k2/p2) d for a grid, k/p d one way.
 */
export function kerfVolume({ pitch, width, depth, ways }: Kerfs): Outcome {
  return given(
    [
      positive('the distance between cuts', pitch),
      positive('the width of the cuts', width),
      positive('the depth of the cuts', depth),
      demand(pitch > width, 'the cuts run into each other: they are wider than the distance between them'),
    ],
    () => {
      const share = width / pitch;
      return (ways === 2 ? 2 * share - share * share : share) * depth;
    },
  );
}

/** A groove in a core and the strip that lies in it; metres. */
export interface Groove {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  /** volume of what lies in it, m3 */
  readonly filled: number;
}

/** Room that is left for resin in a groove round its strip, m3. */
export function grooveRoom({ length, width, depth, filled }: Groove): Outcome {
  return given(
    [
      positive('the length of the groove', length),
      positive('the width of the groove', width),
      positive('the depth of the groove', depth),
      notNegative('the volume of the strip', filled),
    ],
    () => {
      const room = length * width * depth - filled;
      return room >= -1e-12 ? Math.max(0, room) : { problem: 'the strip has more volume than its groove' };
    },
  );
}

/** Resin (kg) that the cut cells of a core take: `uptake` (kg/m2 for each face) over `area` (m2) on `faces` faces. */
export function surfaceUptake(area: number, uptake: number, faces = 2): Outcome {
  return given(
    [
      notNegative('the area of the core', area),
      notNegative('the uptake of its cells', uptake),
      count('the number of faces', faces, 0),
    ],
    () => area * uptake * faces,
  );
}
