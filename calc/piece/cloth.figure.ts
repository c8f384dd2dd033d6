import { LEAST_EXCESS } from '../cloth/habits.ts';
import { layerDrape } from '../curve/drape.figure.ts';
import { type Bench, defineFigure, isKnown, known, text, usual, whenKnown, worked } from '../figure/index.ts';
import { type Cloth, UNKNOWN } from '../model/index.ts';
import { following, isImpossible } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { cutoutsOf, inRecipe, partFrame } from '../outline/part.figure.ts';
import { origin } from '../outline/shape.ts';
import { type LaidDirection, laidDirections } from '../stack/directions.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { type ClothContours, pieceNotches } from './cloth-contours.figure.ts';
import { dartsOn, withDarts } from './cut-in.ts';
import { placedDarts } from './darts.figure.ts';
import type { CutsLaid, Dart, FlatPiece, Mark } from './flat-piece.ts';
import { placedContour } from './footprint-contour.ts';
import { chordsOn, type HalfPlane, onLine } from './half-plane.ts';
import { grainOf, type Joins, layerJoins } from './joins.figure.ts';
import { lanesOf } from './lanes.ts';
import { lineWithin } from './line-parts.ts';
import { measures } from './measures.ts';
import { placeNear, rimOf } from './rim.ts';
import { tabbedContours } from './tabbed.figure.ts';

/** The flat pieces of a ply, strip or patch: one, or its lanes where it is wider than its roll. */
export const clothPieces = defineFigure<readonly FlatPiece[]>('cloth_pieces', (bench, key) =>
  whenKnown(
    {
      laid: bench.ask(laidLayer, key),
      contours: bench.ask(tabbedContours, key),
      darts: bench.ask(placedDarts, key),
      joins: bench.ask(layerJoins, key),
      lines: pieceLines(bench, key),
    },
    ({ laid, contours, darts, joins, lines }, reasons) => {
      const cloth = clothOf(bench, laid);
      const cutsLaid = cutsAsLaid(bench, key);
      const pieces = joins === undefined ? whole(contours, darts, lines) : lanes(contours, darts, lines, joins);
      const grain = grainOf(laid);
      const flat = pieces.map(({ cut, holes, darts: own, marks, lane }, i): FlatPiece => {
        const size = measures(cut, holes);
        const name = pieces.length === 1 ? laid.name : `${laid.name} ${i + 1}/${pieces.length}`;
        return {
          name,
          of: laid.name,
          path: laid.path,
          kind: 'cloth',
          ...(laid.layer.material === undefined ? {} : { material: laid.layer.material }),
          count: 1,
          cut: withDarts(cut, own),
          holes,
          darts: own,
          marks,
          drills: [],
          ...(grain === undefined || cloth?.style === 'random' ? {} : { grain }),
          faceUp: !laid.turnedOver,
          mayTurn: cloth !== undefined,
          mayMirror: cloth !== undefined && sameTurnedOver(cloth),
          ...withoutDarts(size, cut, own),
          ...(lane === undefined ? {} : { lane: { number: i + 1, of: pieces.length, lap: lane } }),
          ...(cutsLaid === undefined ? {} : { cutsLaid }),
        };
      });
      return worked<readonly FlatPiece[]>(flat, text('the flat piece of {layer}, darts cut in', { layer: laid.name }), {
        at: inRecipe(bench, laid.path),
        reasons,
      });
    },
  ),
);

/** What double curvature asks for beyond the shear of the cloth; nothing where that is pressed flat, or is not known. */
function cutsAsLaid(bench: Bench, key: string): CutsLaid | undefined {
  const [drape, least] = [bench.ask(layerDrape, key), usual(bench, LEAST_EXCESS)];
  if (!isKnown(drape) || !isKnown(least) || drape.value === undefined) return undefined;
  const { left, darts } = drape.value;
  if (Math.abs(left) <= least.value || darts === 0) return undefined;
  return { kind: left > 0 ? 'dart' : 'slit', count: darts, width: Math.abs(left) / darts };
}

const withoutDarts = (size: ReturnType<typeof measures>, cut: Contour, darts: readonly Dart[]) => {
  if (darts.length === 0) return size;
  const left = measures(withDarts(cut, darts), []).area - measures(cut, []).area + size.area;
  return { ...size, area: left, darted: size.area - left };
};

interface Cut {
  readonly cut: Contour;
  readonly holes: readonly Contour[];
  readonly darts: readonly Dart[];
  readonly marks: readonly Mark[];
  /** overlap of a lane with its neighbours, m */
  readonly lane?: number;
}

function whole({ flats, footprint }: ClothContours, darts: readonly Dart[], lines: readonly Mark[]): Cut[] {
  return flats.map(({ outer, holes }, i) => ({
    cut: outer,
    holes,
    darts: i === 0 ? darts : [],
    marks: [...(i === 0 ? lines : []), ...notches(outer, footprint, darts)],
  }));
}

/** A notch that would fall on a dart is left out. */
const notches = (outer: Contour, footprint: ClothContours['footprint'], darts: readonly Dart[]): readonly Mark[] =>
  pieceNotches(outer, footprint).filter(({ line: [edge] }) =>
    darts.every(
      ({ mouth, width }) => edge === undefined || Math.hypot(mouth.x - edge.x, mouth.y - edge.y) > width / 2 + 1e-4,
    ),
  );

function lanes(contours: ClothContours, darts: readonly Dart[], lines: readonly Mark[], joins: Joins): Cut[] {
  const { way, at, lap } = joins;
  const normal = { x: -Math.sin(way), y: Math.cos(way) };
  const back = { x: -normal.x, y: -normal.y };
  return contours.flats.flatMap(({ outer, holes }) => {
    const all = [...lines, ...notches(outer, contours.footprint, darts)];
    return lanesOf(outer, way, at, lap).flatMap((pieces, i) => {
      const [before, after] = [at[i - 1], at[i]];
      const halves: HalfPlane[] = [
        ...(before === undefined ? [] : [{ normal, from: before - lap / 2 }]),
        ...(after === undefined ? [] : [{ normal: back, from: -after - lap / 2 }]),
      ];
      // where the neighbour ends on this one
      const ends =
        lap === 0 ? [] : [before, after].flatMap((join, k) => (join === undefined ? [] : join + (k - 0.5) * -lap));
      return pieces.map((cut): Cut => {
        const marks = all.flatMap((mark) =>
          halves
            .reduce(
              (parts, half) => parts.flatMap((part) => lineWithin(part, half)),
              [{ line: mark.line, closed: mark.closed }],
            )
            .map((part) => ({ ...mark, ...part })),
        );
        const edges = ends.flatMap((from) => joinMarks(cut, { normal, from }));
        return {
          cut,
          holes: holes.filter((hole) => holds(cut, hole)),
          darts: dartsOn(cut, darts),
          marks: [...marks, ...edges],
          lane: lap,
        };
      });
    });
  });
}

const joinMarks = (cut: Contour, line: HalfPlane): Mark[] =>
  chordsOn(cut, line).map(([from, to]) => ({
    kind: 'join',
    line: [onLine(line, from), onLine(line, to)],
    closed: false,
  }));

const holds = (cut: Contour, hole: Contour): boolean => hole.every((p) => placeNear(rimOf(cut), p).distance > 0);

/** Lines that are drawn on a piece of cloth that covers the part: where it leaves the face, and what is cut out later. */
const pieceLines = (bench: Bench, key: string) =>
  whenKnown({ laid: bench.ask(laidLayer, key), contours: bench.ask(tabbedContours, key) }, ({ laid, contours }) => {
    const { whole, stretch } = contours.footprint;
    if (!whole) return known<readonly Mark[]>([]);
    return whenKnown({ frame: bench.ask(partFrame), cutouts: bench.ask(cutoutsOf) }, ({ frame, cutouts }) => {
      const kind = laid.layer.extent.kind === 'wrap' ? 'fold' : 'edge';
      const outline =
        contours.out > 0
          ? following(
              placedContour({ shape: frame.shape, centre: origin }, stretch),
              (line): Mark => ({ kind, line, closed: true }),
            )
          : undefined;
      const later = cutouts.map((cutout) =>
        following(placedContour(cutout, stretch), (line): Mark => ({ kind: 'cutout', line, closed: true })),
      );
      return known<readonly Mark[]>(
        [outline, ...later].flatMap((mark) => (mark === undefined || isImpossible(mark) ? [] : [mark])),
      );
    });
  });

function clothOf(bench: Bench, laid: LaidLayer): Cloth | undefined {
  const material = laid.layer.material === undefined ? undefined : bench.material(laid.layer.material);
  const cloth = material?.cloth?.value;
  return cloth === UNKNOWN ? undefined : cloth;
}

/** Whether a cloth that is turned over about its warp lies as before: same directions in the same order, if it has an order. */
export function sameTurnedOver(cloth: Cloth): boolean {
  const [lying, over] = [laidDirections(cloth, 0, false), laidDirections(cloth, 0, true)];
  const ordered = cloth.style === 'stitched';
  const key = ({ angle, arealWeight }: LaidDirection) => `${angle?.toFixed(6) ?? '-'} ${arealWeight.toFixed(6)}`;
  const [a, b] = [lying.map(key), over.map(key)];
  return (ordered ? a : a.sort()).join() === (ordered ? b : b.sort()).join();
}
