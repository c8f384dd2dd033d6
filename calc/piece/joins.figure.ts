import { JOIN_LAP, STAGGER } from '../cloth/habits.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  text,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerMaterial } from '../laminate/fraction.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { inRecipe, partFrame, placedPoint } from '../outline/part.figure.ts';
import type { Point } from '../outline/shape.ts';
import { fibreAngle } from '../stack/directions.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { isDarted, placedDarts } from './darts.figure.ts';
import { type HalfPlane, onLine } from './half-plane.ts';
import { acrossRoll, joinsAcross, type KeepClear } from './lanes.ts';
import { tabbedContours } from './tabbed.figure.ts';

/** How a piece is made up of lanes. */
export interface Joins {
  /** the way along which its lanes lie, rad from x */
  readonly way: number;
  /** the middle of each overlap, m across that way from the origin, from low to high */
  readonly at: readonly number[];
  /** m; 0 for butt joins */
  readonly lap: number;
}

/** The way of the roll in the part, over -90 and up to 90 degrees in rad; none for cloth without direction. */
export function grainOf({ angle, layer }: LaidLayer): number | undefined {
  if (angle !== undefined) {
    const within = fibreAngle(angle);
    return within > Math.PI / 2 + 1e-9 ? within - Math.PI : within;
  }
  return layer.warpAlong === undefined ? undefined : layer.warpAlong === 'x' ? 0 : Math.PI / 2;
}

export const acrossOf = (way: number, { x, y }: Point): number => y * Math.cos(way) - x * Math.sin(way);

/** Width of the roll that a layer is cut from, m; none where it is not known. */
export const rollWidth = (bench: Bench, laid: LaidLayer): number | undefined => {
  const material = bench.ask(layerMaterial, laid.key);
  const roll = isKnown(material) ? material.value.roll?.value : undefined;
  return roll === undefined || roll === UNKNOWN ? undefined : roll.width.si;
};

function lapOf(bench: Bench, { layer }: LaidLayer): Figure<number> {
  const said = layer.lap ?? layer.joins?.find(({ kind }) => kind === 'lap')?.lap;
  if (said !== undefined) return known(said.si);
  return layer.joins?.some(({ kind }) => kind === 'butt') === true ? known(0) : usual(bench, JOIN_LAP);
}

const noPoints = known<readonly Point[]>([]);

/** Where the text puts joins, and by how much a copy moves them. */
function typedJoins(bench: Bench, { layer }: LaidLayer): Figure<readonly Point[]> {
  if (layer.joins === undefined) return noPoints;
  const places = layer.joins.flatMap(({ at }) => (at === undefined ? [] : [at]));
  if (places.length === 0) return noPoints;
  return ifKnown(bench.ask(partFrame), (frame) =>
    known(
      places.flatMap((place) => {
        const point = placedPoint(frame, place);
        return isImpossible(point) ? [] : [point];
      }),
    ),
  );
}

/**
 * The lanes of a ply: along the roll where it is wider than that, else none; a typed join in a ply that its roll covers parts it
 * across, end to end. Copies move them by the stagger of their repeat.
 */
const ownJoins = (bench: Bench, laid: LaidLayer, others: readonly Joins[]): Figure<Joins | undefined> => {
  const inputs = {
    contours: bench.ask(tabbedContours, laid.key),
    lap: lapOf(bench, laid),
    typed: typedJoins(bench, laid),
    darts: isDarted(laid) ? bench.ask(placedDarts, laid.key) : known([]),
    apart: usual(bench, STAGGER),
  };
  return whenKnown(inputs, ({ contours, lap, typed, darts, apart }) => {
    const outer = contours.flats[0]?.outer;
    if (outer === undefined) return known(undefined);
    const roll = rollWidth(bench, laid) ?? Infinity;
    const along = alongRoll(outer, grainOf(laid));
    const span = acrossRoll(outer, along);
    const wide = span.high - span.low > roll * (1 + 1e-9);
    if (!wide && typed.length === 0) return known(undefined);
    const way = wide ? along : along + Math.PI / 2;
    const clear: KeepClear[] = darts.map(({ mouth, width }) => ({ at: acrossOf(way, mouth), by: (width + lap) / 2 }));
    // a copy stands off by the stagger of its repeat
    for (const other of laid.stagger === 0 ? others : [])
      if (parallel(other.way, way))
        for (const at of other.at)
          clear.push({ at: sameWay(other.way, way) * at, by: Math.max(apart, (lap + other.lap) / 2) });
    const across = wide ? span : acrossRoll(outer, way);
    // end to end it is parted where the text says, and nowhere else
    const width = wide ? roll : across.high - across.low + 1;
    const said = typed.map((point) => acrossOf(way, { x: point.x + laid.stagger, y: point.y }));
    const found =
      said.length > 0 ? joinsAcross(across, width, lap, said, clear) : joinsAcross(across, width, lap, [], clear);
    if (isImpossible(found)) return worked<Joins | undefined>(found, '', { at: inRecipe(bench, laid.path) });
    // a copy has the joins of the line, moved on; what is then too wide is parted once more
    const moved =
      laid.stagger === 0 || said.length > 0
        ? found
        : joinsAcross(
            across,
            width,
            lap,
            found.map((at) => at + laid.stagger),
            clear,
          );
    const at = isImpossible(moved) ? found : moved;
    return known(at.length === 0 ? undefined : { way, at, lap });
  });
};

/** Cloth without direction lies as it fits best. */
function alongRoll(outer: Parameters<typeof acrossRoll>[0], grain: number | undefined): number {
  if (grain !== undefined) return grain;
  const [flat, upright] = [acrossRoll(outer, 0), acrossRoll(outer, Math.PI / 2)];
  return flat.high - flat.low <= upright.high - upright.low + 1e-9 ? 0 : Math.PI / 2;
}

const parallel = (a: number, b: number): boolean => Math.abs(Math.sin(a - b)) < 1e-3;
const sameWay = (a: number, b: number): number => (Math.cos(a - b) > 0 ? 1 : -1);

/** Joins as they lie where no ply below or above matters. */
const plainJoins = defineFigure<Joins | undefined>('plain_joins', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  return isKnown(laid) ? ownJoins(bench, laid.value, []) : laid;
});

/** How a ply is joined of lanes; nothing where it is one piece. Every second ply moves its joins off those next to it. */
export const layerJoins = defineFigure<Joins | undefined>('layer_joins', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), stack: bench.ask(laidStack) }, ({ laid, stack }) => {
    const plain = bench.ask(plainJoins, key);
    if (isKnown(plain) && plain.value === undefined) return plain;
    const plies = stack.layers.filter(({ layer }) => layer.kind === 'ply');
    const at = plies.indexOf(laid);
    if (at < 0 || at % 2 === 0) return plain;
    const beside = [plies[at - 1], plies[at + 1]].flatMap((other) => {
      const joins = other === undefined ? undefined : bench.ask(plainJoins, other.key);
      return joins !== undefined && isKnown(joins) && joins.value !== undefined ? [joins.value] : [];
    });
    if (beside.length === 0) return plain;
    return ifKnown(ownJoins(bench, laid, beside), (joins, reasons) =>
      worked<Joins | undefined>(joins, text('joins stand off those of the plies next to it'), { reasons }),
    );
  }),
);

/** The line of a join. */
export const joinLine = ({ way }: Joins, at: number): HalfPlane => ({
  normal: { x: -Math.sin(way), y: Math.cos(way) },
  from: at,
});

/** The point of a join that is nearest to the middle of the part. */
export const joinPoint = (joins: Joins, at: number): Point => onLine(joinLine(joins, at), 0);

/** A join of one ply that lies less than `apart` (m) beside a join of another that runs the same way. */
export const nearJoin = (own: Joins, other: Joins, apart: number): number | undefined =>
  parallel(own.way, other.way)
    ? own.at.find((at) => other.at.some((to) => Math.abs(at - sameWay(own.way, other.way) * to) < apart - 1e-9))
    : undefined;
