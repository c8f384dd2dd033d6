import { onceRound } from './rim.ts';

/** A cut that is to be found a place on a closed rim; m. */
export interface Wanted {
  /** where its middle would lie best */
  readonly place: number;
  readonly width: number;
}

/** A stretch of the rim that stays clear, from `from` on to `to` (counted onwards, so `to` may pass the end); m. */
export interface Blocked {
  readonly from: number;
  readonly to: number;
}

export interface Found {
  /** index in the list that was asked for */
  readonly of: number;
  readonly place: number;
  /** m; less than asked where the rim has no room for all of them side by side */
  readonly width: number;
}

/**
 * Places on a closed rim of `length` (m) for cuts that must not run into each other nor into what is blocked: `gap` (m) of
 * cloth stays between two. They move as little as can be (least squares; pool adjacent violators, Ayer et al. 1955), in the
 * order in which they come. Where there is no room they stand edge to edge and become narrower.
 */
export function spread(wanted: readonly Wanted[], length: number, gap: number, blocked: readonly Blocked[]): Found[] {
  if (wanted.length === 0) return [];
  const order = wanted
    .map((w, of) => ({ of, width: w.width, place: onceRound(w.place, length) }))
    .sort((a, b) => a.place - b.place || a.of - b.of);
  return tracksOf(order, length, gap, blocked).flatMap((track) => settled(track, gap));
}

interface Track {
  /** where cuts may lie, m; may pass the end of the rim */
  readonly low: number;
  readonly high: number;
  readonly cuts: { readonly of: number; readonly width: number; readonly place: number }[];
}

/** The free stretches of the rim, each with the cuts that are nearest to it, in order. */
function tracksOf(
  cuts: readonly Track['cuts'][number][],
  length: number,
  gap: number,
  blocked: readonly Blocked[],
): Track[] {
  const walls = joinedWalls(blocked, length);
  if (walls.length === 0) {
    // cut open in the widest gap between two cuts
    let [widest, at] = [-1, 0];
    cuts.forEach((cut, i) => {
      const before = cuts[(i + cuts.length - 1) % cuts.length]!;
      const free = cuts.length === 1 ? length : onceRound(cut.place - before.place, length);
      if (free > widest + 1e-12) [widest, at] = [free, i];
    });
    const low = cuts[at]!.place - widest / 2;
    const round = [...cuts.slice(at), ...cuts.slice(0, at)];
    return [
      {
        low: low + gap / 2,
        high: low + length - gap / 2,
        cuts: round.map((cut) => ({ ...cut, place: low + onceRound(cut.place - low, length) })),
      },
    ];
  }
  const tracks = walls.map((wall, i): Track => {
    const next = walls[(i + 1) % walls.length]!;
    const high = wall.to + onceRound(next.from - wall.to, length);
    return { low: wall.to + gap, high: high - gap, cuts: [] };
  });
  for (const cut of cuts) {
    const [track, place] = nearestTrack(tracks, cut.place, length);
    track.cuts.push({ ...cut, place });
  }
  for (const track of tracks) track.cuts.sort((a, b) => a.place - b.place || a.of - b.of);
  return tracks;
}

function joinedWalls(blocked: readonly Blocked[], length: number): { from: number; to: number }[] {
  const sorted = blocked
    .filter(({ from, to }) => to > from)
    .map(({ from, to }) => ({
      from: onceRound(from, length),
      to: onceRound(from, length) + Math.min(to - from, length),
    }))
    .sort((a, b) => a.from - b.from);
  const walls: { from: number; to: number }[] = [];
  for (const wall of sorted) {
    const last = walls.at(-1);
    if (last !== undefined && wall.from <= last.to) last.to = Math.max(last.to, wall.to);
    else walls.push({ ...wall });
  }
  const [first, last] = [walls[0], walls.at(-1)];
  if (first !== undefined && last !== undefined && first !== last && last.to >= first.from + length) {
    last.to = Math.max(last.to, first.to + length);
    walls.shift();
  }
  return walls;
}

/** Where a place that is told once round lies on the unrolled track that is nearest to it. */
function nearestTrack(tracks: readonly Track[], place: number, length: number): readonly [Track, number] {
  let best: readonly [Track, number, number] | undefined;
  for (const track of tracks) {
    const middle = (track.low + track.high) / 2;
    const unrolled = middle - length / 2 + onceRound(place - middle + length / 2, length);
    const off = Math.max(track.low - unrolled, unrolled - track.high, 0);
    if (best === undefined || off < best[2] - 1e-12) best = [track, unrolled, off];
  }
  return [best![0], best![1]];
}

function settled({ low, high, cuts }: Track, gap: number): Found[] {
  if (cuts.length === 0) return [];
  const all = cuts.reduce((sum, cut) => sum + cut.width, 0);
  const room = Math.max(0, high - low);
  const between = Math.min(gap, cuts.length > 1 ? Math.max(0, room - all) / (cuts.length - 1) : gap);
  // nothing is cut narrower unless even edge to edge there is no room
  const narrower = all > room ? room / all : 1;
  let middle = 0;
  const offsets = cuts.map((cut, i) => {
    if (i > 0) middle += ((cuts[i - 1]!.width + cut.width) / 2) * narrower + between;
    return middle;
  });
  const first = (cuts[0]!.width / 2) * narrower;
  const last = (cuts.at(-1)!.width / 2) * narrower;
  const least = low + first;
  const most = high - last - middle;
  return isotonic(cuts.map((cut, i) => cut.place - offsets[i]!)).map((t, i) => ({
    of: cuts[i]!.of,
    place: Math.max(least, Math.min(t, most)) + offsets[i]!,
    width: cuts[i]!.width * narrower,
  }));
}

/** The nearest list that never falls, by least squares. */
function isotonic(values: readonly number[]): number[] {
  const blocks: { sum: number; count: number }[] = [];
  for (const value of values) {
    blocks.push({ sum: value, count: 1 });
    for (;;) {
      const [before, last] = [blocks.at(-2), blocks.at(-1)!];
      if (before === undefined || before.sum / before.count <= last.sum / last.count) break;
      blocks.pop();
      before.sum += last.sum;
      before.count += last.count;
    }
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}
