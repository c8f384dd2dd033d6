import { onceRound, shortWay } from './rim.ts';

/** A cut on a closed rim that is to be found a place; m. */
export interface CutWanted {
  /** where its middle would lie best */
  readonly place: number;
  /** what it takes out of the rim */
  readonly width: number;
  /** how far its middle may lie before that place, and how far behind it */
  readonly back: number;
  readonly on: number;
  /** so much further at need */
  readonly past: number;
}

/** A seam of another ply; m on the rim. The middle of a cut lies `before` it or `behind` it at least. */
export interface Seam {
  readonly place: number;
  readonly before: number;
  readonly behind: number;
  /** half of what is cut out there: where there is room, the flat edges of both cuts keep off each other too */
  readonly half: number;
}

/** What no cut may come into: so far (m) to both sides of its place. */
export interface Wall {
  readonly place: number;
  readonly by: number;
}

interface Around {
  /** of the rim, m */
  readonly length: number;
  /** cloth between two cuts, m */
  readonly gap: number;
  readonly seams: readonly Seam[];
  readonly walls: readonly Wall[];
}

/**
 * What a metre that is missing costs against a metre moved, both squared: staying apart comes first, then staying off
 * seams, then on the bend. */
const CROWDED = 1e9;
const WALLED = 1e8;
const ON_SEAM = 1e6;
const PAST_END = 1e3;
const NEAR_SEAM = 1;

/** So many tries to a gap, besides the places where a cut just clears something. */
const triesToGap = 4;

/** So many cuts that stand close in a row are pushed aside by what only the first of them must clear. */
const longestRow = 12;

/** Less than this is nothing missing, m. */
const slack = 1e-9;
/** Cuts no further apart than they must be stand in a row, m. */
const touching = 1e-7;

/**
 * Places on a closed rim for all cuts together: in their order, `gap` of cloth between each two, none in a wall, none on a
 * seam, and moved as little as that allows. Where there is no room for all of it the least is given up, seams first. By
 * dynamic programming over the places that come into question for each (Bellman 1957).
 * @returns m on the rim, in the order of `cuts`
 */
export function settleCuts(cuts: readonly CutWanted[], around: Around): readonly number[] {
  if (cuts.length === 0) return [];
  const line = unrolled(cuts, around.length);
  const found = line.every((cut, i) => isFree(cut, line[i + 1], line[0]!, around))
    ? line.map(({ place }) => place)
    : unlessCrowded(line, cheapest(line, around), around.gap);
  const places = cuts.map(({ place }) => place);
  line.forEach(({ of, place }, i) => {
    if (found[i] !== place) places[of] = onceRound(found[i]!, around.length);
  });
  return places;
}

/** A row that has no room even edge to edge stays as it was wanted: it is spread evenly afterwards. */
function unlessCrowded(line: readonly OnLine[], found: readonly number[], gap: number): readonly number[] {
  const places = [...found];
  let [from, crowded] = [0, false];
  for (let i = 1; i <= line.length; i++) {
    const room = i < line.length ? found[i]! - found[i - 1]! - apart(line[i - 1]!, line[i]!, gap) : Infinity;
    crowded ||= room < -touching;
    if (room <= touching) continue;
    for (let k = from; crowded && k < i; k++) places[k] = line[k]!.place;
    [from, crowded] = [i, false];
  }
  return places;
}

interface OnLine extends CutWanted {
  readonly of: number;
}

/** The rim cut open in the widest gap between two cuts: their places rise from there on. No cut moves past that place. */
function unrolled(cuts: readonly CutWanted[], length: number): readonly OnLine[] {
  const sorted = cuts
    .map((cut, of) => ({ ...cut, of, place: onceRound(cut.place, length) }))
    .sort((a, b) => a.place - b.place || a.of - b.of);
  let [widest, first] = [-1, 0];
  sorted.forEach(({ place }, i) => {
    const free = i > 0 ? place - sorted[i - 1]!.place : place + length - sorted.at(-1)!.place;
    if (free > widest + slack) [widest, first] = [free, i];
  });
  const low = sorted[first]!.place - widest / 2;
  return [...sorted.slice(first), ...sorted.slice(0, first)].map((cut) => {
    const place = low + onceRound(cut.place - low, length);
    return { ...cut, place };
  });
}

const apart = (a: CutWanted, b: CutWanted, gap: number) => (a.width + b.width) / 2 + gap;

function isFree(cut: OnLine, next: OnLine | undefined, first: OnLine, { length, gap, seams, walls }: Around): boolean {
  const [after, at] = next === undefined ? [first, first.place + length] : [next, next.place];
  if (after.of !== cut.of && at - cut.place < apart(cut, after, gap) - slack) return false;
  const clear = (place: number, before: number, behind: number) => {
    const off = shortWay(cut.place - place, length);
    return off >= behind - slack || -off >= before - slack;
  };
  return (
    seams.every(({ place, before, behind }) => clear(place, before, behind)) &&
    walls.every(({ place, by }) => clear(place, by + gap + cut.width / 2, by + gap + cut.width / 2))
  );
}

/** What keeps a cut off a place near it, measured from where it would lie best. */
interface Keep {
  readonly at: number;
  readonly before: number;
  readonly behind: number;
  readonly cost: number;
  /** so much more would be good, m */
  readonly more: number;
}

interface Tries {
  /** rising, m on the line */
  readonly places: readonly number[];
  readonly costs: Float64Array;
  /** which place of the cut before goes with each */
  readonly from: Int32Array;
}

function cheapest(line: readonly OnLine[], around: Around): readonly number[] {
  const { length, gap } = around;
  const [first, last] = [line[0]!, line.at(-1)!];
  // both ends of the opened rim share the gap between them
  const ends = apart(first, last, gap) / 2;
  const middle = (first.place + last.place - length) / 2;
  const [low, high] = line.length > 1 ? [middle + ends, middle + length - ends] : [-Infinity, Infinity];
  const steps = line.map((cut, i) => (i === 0 ? 0 : apart(line[i - 1]!, cut, gap)));
  const bounds = line.map(
    ({ place, back, on, past }) => [Math.max(place - back - past, low), Math.min(place + on + past, high)] as const,
  );
  const keeps = line.map((cut) => keepsOf(cut, around));
  const edges = pushed(line, keeps, bounds, steps);
  const all: Tries[] = [];
  line.forEach((cut, i) => {
    const places = placesOf(cut, keeps[i]!, bounds[i]!, edges[i]!, gap / triesToGap);
    all.push(settled(cut, keeps[i]!, places, all.at(-1), steps[i]!));
  });
  return traced(all);
}

type Bounds = readonly [low: number, high: number];

/** Where each cut just clears something, lies best or ends its bend, or stands close to one before or behind it that does. */
function pushed(
  line: readonly OnLine[],
  keeps: readonly (readonly Keep[])[],
  bounds: readonly Bounds[],
  steps: readonly number[],
): readonly (readonly number[])[] {
  const own = line.map(({ place, back, on }, i) => [
    place,
    place - back,
    place + on,
    ...bounds[i]!,
    ...keeps[i]!.flatMap(({ at, before, behind }) => [place + at - before, place + at + behind]),
  ]);
  const all = own.map((edges) => [...edges]);
  const sweep = (way: 1 | -1) => {
    let row = own;
    for (let k = 0; k < longestRow && row.some((edges) => edges.length > 0); k++) {
      row = row.map((_, i) => {
        const by = way * (way > 0 ? steps[i]! : (steps[i + 1] ?? 0));
        const [low, high] = bounds[i]!;
        return (row[i - way] ?? []).map((edge) => edge + by).filter((edge) => edge >= low && edge <= high);
      });
      row.forEach((edges, i) => {
        all[i]!.push(...edges);
      });
    }
  };
  sweep(1);
  sweep(-1);
  return all;
}

function keepsOf(cut: OnLine, { length, gap, seams, walls }: Around): readonly Keep[] {
  const reach = (off: number, by: number) => off >= -cut.back - cut.past - by && off <= cut.on + cut.past + by;
  const keeps: Keep[] = [];
  for (const { place, before, behind, half } of seams) {
    const at = shortWay(place - cut.place, length);
    const more = half + cut.width / 2;
    if (reach(at, Math.max(before, behind) + more)) keeps.push({ at, before, behind, cost: ON_SEAM, more });
  }
  for (const { place, by } of walls) {
    const at = shortWay(place - cut.place, length);
    const off = by + gap + cut.width / 2;
    if (reach(at, off)) keeps.push({ at, before: off, behind: off, cost: WALLED, more: 0 });
  }
  return keeps.sort((a, b) => a.at - b.at);
}

/** The places that one cut may take, rising: the edges, and steps in between. */
function placesOf(
  { place }: OnLine,
  keeps: readonly Keep[],
  [low, high]: Bounds,
  edges: readonly number[],
  step: number,
): readonly number[] {
  if (low > high) return [place];
  const places = [...edges];
  for (let off = step; off < Math.max(place - low, high - place); off += step) places.push(place + off, place - off);
  keeps.forEach((keep, i) => {
    const next = keeps[i + 1];
    if (next !== undefined) places.push(place + (keep.at + keep.behind + next.at - next.before) / 2);
  });
  return places
    .filter((at) => at >= low && at <= high)
    .sort((a, b) => a - b)
    .filter((at, i, sorted) => i === 0 || at > sorted[i - 1]! + slack / 10);
}

/** What each place of a cut costs, all cuts before it settled as well as they can be. */
function settled(
  cut: OnLine,
  keeps: readonly Keep[],
  places: readonly number[],
  before: Tries | undefined,
  step: number,
): Tries {
  const costs = new Float64Array(places.length);
  const from = new Int32Array(places.length);
  let [best, behind] = [-1, 0];
  places.forEach((place, i) => {
    const off = place - cut.place;
    const past = Math.max(0, -cut.back - off, off - cut.on);
    let cost = off * off + PAST_END * past * past;
    for (const keep of keeps) cost += costOf(keep, off);
    if (before !== undefined) {
      while (behind < before.places.length && before.places[behind]! <= place - step + slack) {
        if (best < 0 || before.costs[behind]! < before.costs[best]!) best = behind;
        behind++;
      }
      const of = Math.max(0, best);
      from[i] = of;
      const short = Math.max(0, step - (place - before.places[of]!) - slack);
      cost += before.costs[of]! + CROWDED * short * short;
    }
    costs[i] = cost;
  });
  return { places, costs, from };
}

function costOf({ at, before, behind, cost, more }: Keep, off: number): number {
  const by = off < at ? before - (at - off) : behind - (off - at);
  const short = Math.max(0, by - slack);
  const near = Math.max(0, by + more);
  return cost * short * short + (more > 0 ? NEAR_SEAM * near * near : 0);
}

/** From the cheapest place of the last cut back to the first. */
function traced(all: readonly Tries[]): readonly number[] {
  const found: number[] = [];
  const costs = all.at(-1)!.costs;
  let at = 0;
  for (let i = 1; i < costs.length; i++) if (costs[i]! < costs[at]!) at = i;
  for (let k = all.length - 1; k >= 0; k--) {
    const { places, from } = all[k]!;
    found.unshift(places[at]!);
    at = from[at]!;
  }
  return found;
}
