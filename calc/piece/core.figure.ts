import { CLEARANCE } from '../core/core.figure.ts';
import { chamferRun } from '../core/solid.ts';
import { cutStretch } from '../curve/core-bend.figure.ts';
import type { Stretch } from '../curve/surface.ts';
import {
  allKnown,
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
import { layerThickness } from '../laminate/thickness.figure.ts';
import { UNKNOWN } from '../model/index.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { clippedContours } from '../outline/clip.ts';
import type { Contour } from '../outline/contour.ts';
import { contourDistance } from '../outline/contour-distance.ts';
import { reversed } from '../outline/contour-measure.ts';
import { cutoutsOf, inRecipe } from '../outline/part.figure.ts';
import type { Placed } from '../outline/shape.ts';
import { layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { insertsOf, namedLayers, piecesBeside } from '../stack/order.ts';
import { pieceNotches } from './cloth-contours.figure.ts';
import { cells, gridCuts, gridHoles, partingOf } from './core-lines.ts';
import type { FlatPiece, Mark } from './flat-piece.ts';
import { type Flat, grownContours, movedOn, offsetLines, placedContour } from './footprint-contour.ts';
import { clippedByAll } from './half-plane.ts';
import { lineWithin } from './line-parts.ts';
import { measures } from './measures.ts';

/** Middles of holes stay off the edges of a core by this, or by one and a half diameters; m. Common practice. */
const leastMargin = 0.005;

interface Opening {
  readonly line: Contour;
  readonly name?: string;
  /** cut right through */
  readonly through: boolean;
  /** the core is laid in several pieces: it may stand in another one */
  readonly anywhere?: boolean;
}

/** What an opening stands over a piece at the least to be of it, m. */
const TOUCHES = 1e-4;

/** The flat pieces of a core: its sheets, with all that is cut into them. The cut line of a sloped edge is that of its toe. */
export const corePieces = defineFigure<readonly FlatPiece[]>('core_pieces', (bench, key) =>
  whenKnown(
    {
      laid: bench.ask(laidLayer, key),
      footprint: bench.ask(layerFootprint, key),
      openings: openingsOf(bench, key),
      grooves: groovesOf(bench, key),
      chamfer: bench.ask(layerChamfer, key),
      stretch: bench.ask(cutStretch, key),
    },
    ({ laid, footprint, openings, grooves, chamfer, stretch }, reasons) => {
      const { placed, shorter } = footprint;
      const grown = { placed, out: -footprint.inset, shorter, stretch };
      const pieces = following(grownContours(grown), (flats) => {
        const made: FlatPiece[] = [];
        for (const flat of flats) {
          const found = coreSheets(bench, laid, flat, openings, [
            ...grooves,
            ...toe(flat.outer, chamfer),
            ...pieceNotches(flat.outer, { ...footprint, stretch }),
          ]);
          if (isImpossible(found)) return found;
          made.push(...found);
        }
        return made.map(
          (piece, i): FlatPiece =>
            made.length === 1 ? piece : { ...piece, name: `${laid.name} ${i + 1}/${made.length}` },
        );
      });
      return worked<readonly FlatPiece[]>(pieces, text('the flat piece of {layer}', { layer: laid.name }), {
        at: inRecipe(bench, laid.path),
        reasons,
      });
    },
  ),
);

/** Sheets of one flat shape, butted: cut out where openings go through, drawn where they do not. */
function coreSheets(
  bench: Bench,
  laid: LaidLayer,
  flat: Flat,
  openings: readonly Opening[],
  lines: readonly Mark[],
): Outcome<readonly FlatPiece[]> {
  const material = laid.layer.material === undefined ? undefined : bench.material(laid.layer.material);
  const sheet = material?.sheet?.value;
  const size =
    sheet === undefined || sheet === UNKNOWN ? undefined : { length: sheet.length.si, width: sheet.width.si };
  // what stands in another piece is no matter of this one
  const here = openings.filter(
    ({ line, anywhere }) => anywhere !== true || line.some((p) => contourDistance(flat.outer, p) < -TOUCHES),
  );
  const within = here.filter(({ line, through }) => through && line.every((p) => contourDistance(flat.outer, p) < 0));
  const drawn = here.filter((opening) => !within.includes(opening));
  const marks: Mark[] = [
    ...lines,
    ...drawn.map(
      ({ line, name, through }): Mark => ({
        kind: through ? 'cutout' : 'pocket',
        line,
        closed: true,
        ...(name === undefined ? {} : { name }),
      }),
    ),
    ...within.flatMap(({ line, name }): Mark[] =>
      name === undefined ? [] : [{ kind: 'insert', line, closed: true, name }],
    ),
    ...scores(flat.outer, laid),
  ];
  const all = within.map(({ line }) => reversed(line));
  return following(drillsOf(laid, { outer: flat.outer, holes: within.map(({ line }) => line) }), (drills) => {
    const pieces: FlatPiece[] = [];
    for (const halves of cells(partingOf(flat.outer, laid.layer.pieces, size))) {
      for (const part of clippedByAll(flat.outer, halves)) {
        const inside = all.filter((hole) => hole.every((p) => contourDistance(part, p) < 0));
        const crossing = all.filter(
          (hole) => !inside.includes(hole) && hole.some((p) => contourDistance(part, p) < 1e-9),
        );
        const cut = crossing.length === 0 ? [part] : clippedContours('difference', [part], crossing.map(reversed));
        if ('problem' in cut) return cut;
        for (const line of cut) {
          pieces.push({
            name: laid.name,
            of: laid.name,
            path: laid.path,
            kind: 'core',
            ...(laid.layer.material === undefined ? {} : { material: laid.layer.material }),
            count: 1,
            cut: line,
            holes: inside,
            darts: [],
            marks: marks.flatMap((mark) =>
              halves
                .reduce(
                  (parts, half) => parts.flatMap((one) => lineWithin(one, half)),
                  [{ line: mark.line, closed: mark.closed }],
                )
                .map((one) => ({ ...mark, ...one })),
            ),
            drills: halves.length === 0 ? drills : drills.filter(({ at }) => contourDistance(line, at) < 0),
            faceUp: true,
            mayTurn: true,
            mayMirror:
              laid.layer.score === undefined && laid.layer.chamfer === undefined && laid.layer.grooves === undefined,
            ...measures(line, inside),
          });
        }
      }
    }
    return pieces;
  });
}

function drillsOf({ layer }: LaidLayer, flat: Flat): Outcome<FlatPiece['drills']> {
  const [diameter, pitch] = [layer.perforation?.diameter?.si, layer.perforation?.pitch?.si];
  if (diameter === undefined || pitch === undefined || !(diameter > 0)) return [];
  return following(gridHoles(flat, pitch, Math.max(leastMargin, 1.5 * diameter)), (points) =>
    points.map((at) => ({ at, diameter })),
  );
}

const scores = (outer: Contour, { layer }: LaidLayer): Mark[] =>
  layer.score?.pitch === undefined
    ? []
    : gridCuts(outer, layer.score.pitch.si).map((line) => ({ kind: 'score', line, closed: false }));

/** Where a sloped edge ends on the upper face. */
function toe(outer: Contour, run: number): Mark[] {
  if (run === 0) return [];
  const inner = offsetLines(outer, -run);
  return isImpossible(inner) ? [] : inner.map((line) => ({ kind: 'chamfer', line, closed: true }));
}

/** How far the chamfer of a core or an insert runs in, m; 0 for a square edge. */
export const layerChamfer = defineFigure<number>('layer_chamfer', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), thickness: bench.ask(layerThickness, key) }, ({ laid, thickness }) => {
    const angle = laid.layer.chamfer?.si;
    return angle === undefined
      ? known(0)
      : worked(chamferRun(angle, thickness), text('the slope of {layer}', { layer: laid.name }), {
          at: inRecipe(bench, laid.path),
        });
  }),
);

/** Inserts and cutouts of a core. An insert as thick as the core goes through it. */
const openingsOf = (bench: Bench, key: string): Figure<readonly Opening[]> =>
  whenKnown(
    {
      core: bench.ask(laidLayer, key),
      stack: bench.ask(laidStack),
      footprint: bench.ask(layerFootprint, key),
      cutouts: bench.ask(cutoutsOf),
      thickness: bench.ask(layerThickness, key),
      stretch: bench.ask(cutStretch, key),
    },
    ({ core, stack, footprint, cutouts, thickness, stretch }) => {
      const pieces = piecesBeside(stack.layers, core);
      const inserts = pieces
        .flatMap((piece) => insertsOf(stack.layers, piece))
        .map((insert) =>
          whenKnown(
            { at: bench.ask(layerFootprint, insert.key), own: bench.ask(layerThickness, insert.key) },
            ({ at, own }): Figure<Opening> =>
              worked(
                following(
                  grownContours({ placed: movedOn(at.placed, stretch), out: -at.inset, shorter: at.shorter }),
                  ([flat]): Outcome<Opening> =>
                    flat === undefined
                      ? { problem: text('nothing is left of {layer}', { layer: insert.name }) }
                      : {
                          line: flat.outer,
                          name: insert.name,
                          through: own >= thickness - 1e-9,
                          anywhere: pieces.length > 1,
                        },
                ),
                text('the insert {name}', { name: insert.name }),
              ),
          ),
        );
      const holes = footprint.whole ? cutouts.map((cutout) => opening(cutout, stretch)) : [];
      return allKnown([...inserts, ...holes]);
    },
  );

const opening = (cutout: Placed, stretch: Stretch | undefined): Figure<Opening> =>
  worked(
    following(placedContour(cutout, stretch), (line): Opening => ({ line, through: true })),
    'a cutout',
  );

/** The outline of each groove: that of its strip, with room all round. */
const groovesOf = (bench: Bench, key: string): Figure<readonly Mark[]> =>
  whenKnown(
    { core: bench.ask(laidLayer, key), stack: bench.ask(laidStack), stretch: bench.ask(cutStretch, key) },
    ({ core, stack, stretch }) =>
      allKnown(
        (core.layer.grooves ?? []).flatMap((groove): Figure<Mark>[] => {
          const strip = groove.strip === undefined ? undefined : namedLayers(stack.layers, groove.strip)[0];
          if (strip === undefined) return [];
          const footprint = bench.ask(layerFootprint, strip.key);
          const clearance = groove.clearance === undefined ? usual(bench, CLEARANCE) : known(groove.clearance.si);
          if (!isKnown(footprint)) return [];
          const { placed } = footprint.value;
          const { shape } = placed;
          if (shape.kind !== 'rectangle') return [];
          return [
            ifKnown(clearance, (clearance) => {
              const sized = {
                ...movedOn(placed, stretch),
                shape: {
                  ...shape,
                  length: shape.length + 2 * clearance,
                  width: groove.width?.si ?? shape.width + 2 * clearance,
                },
              };
              return worked<Mark>(
                following(
                  placedContour(sized),
                  (line): Mark => ({ kind: 'groove', line, closed: true, name: strip.name }),
                ),
                text('the groove for {strip}', { strip: strip.name }),
              );
            }),
          ];
        }),
      ),
  );
