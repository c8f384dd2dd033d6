import { processSteps } from '../bag/bag.figure.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isCannot,
  isKnown,
  known,
  type Reason,
  text,
  typed,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { following } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import { isCloth } from '../stack/order.ts';
import { clothPieces } from './cloth.figure.ts';
import { pieceNotches } from './cloth-contours.figure.ts';
import { corePieces, layerChamfer } from './core.figure.ts';
import type { FlatPiece, Mark } from './flat-piece.ts';
import { grownContours, offsetLines } from './footprint-contour.ts';
import { forHands } from './hands.ts';
import { measures } from './measures.ts';
import { SHEET_KINDS, sheetPieces } from './sheet.figure.ts';

/** The flat pieces of one layer of the stack, as they lie in the part (of the first hand where it is handed). A coat has none. */
export const flatPiecesOf = defineFigure<readonly FlatPiece[]>('flat_pieces_of', (bench, key) =>
  ifKnown(bench.ask(laidLayer, key), (laid) => {
    if (laid.layer.kind === 'core') return bench.ask(corePieces, key);
    if (laid.layer.kind === 'insert') return insertPiece(bench, key);
    return isCloth(laid)
      ? bench.ask(clothPieces, key)
      : typed<readonly FlatPiece[]>(
          undefined,
          text('a piece of {layer}, which is a coat,', { layer: laid.name }),
          inRecipe(bench, laid.path),
        );
  }),
);

function insertPiece(bench: Bench, key: string): Figure<readonly FlatPiece[]> {
  const inputs = {
    laid: bench.ask(laidLayer, key),
    footprint: bench.ask(layerFootprint, key),
    chamfer: bench.ask(layerChamfer, key),
  };
  return whenKnown(inputs, ({ laid, footprint, chamfer }, reasons) => {
    const grown = { placed: footprint.placed, out: -footprint.inset, shorter: footprint.shorter };
    const pieces = following(grownContours(grown), (flats) =>
      following(chamfer === 0 || flats[0] === undefined ? [] : offsetLines(flats[0].outer, -chamfer), (tops) =>
        flats.map(({ outer, holes }): FlatPiece => {
          const tapers = tops.map((line): Mark => ({ kind: 'chamfer', line, closed: true }));
          return {
            name: laid.name,
            of: laid.name,
            path: laid.path,
            kind: 'insert',
            ...(laid.layer.material === undefined ? {} : { material: laid.layer.material }),
            count: 1,
            cut: outer,
            holes,
            darts: [],
            marks: [...tapers, ...pieceNotches(outer, footprint)],
            drills: [],
            faceUp: true,
            mayTurn: true,
            mayMirror: chamfer === 0,
            ...measures(outer, holes),
          };
        }),
      ),
    );
    return worked<readonly FlatPiece[]>(pieces, text('the flat piece of {layer}', { layer: laid.name }), {
      at: inRecipe(bench, laid.path),
      reasons,
    });
  });
}

/** What is cut for one part, layers from the tool face and then the sheets of the process. */
const asked = (bench: Bench) =>
  ifKnown(bench.ask(laidStack), (stack) => {
    const layers = stack.layers
      .filter(({ layer }) => layer.kind !== 'coat')
      .map((laid) => ({ of: laid.name, path: laid.path, figure: bench.ask(flatPiecesOf, laid.key) }));
    const steps = bench.ask(processSteps);
    const sheets = (isKnown(steps) ? steps.value : [])
      .filter(({ verb }) => Object.hasOwn(SHEET_KINDS, verb))
      .map((step) => ({ of: step.name ?? step.verb, path: step.path, figure: bench.ask(sheetPieces, step.path) }));
    return known([...layers, ...sheets]);
  });

/** Every piece of one part that can be told, in the order in which it is laid; of a handed part each hand by itself. */
export const flatPieces = defineFigure<readonly FlatPiece[]>('flat_pieces', (bench) =>
  ifKnown(asked(bench), (all) => {
    const found = all.flatMap(({ figure }) => (isKnown(figure) ? figure.value : []));
    return known(forHands(named(found), bench.recipe.handed));
  }),
);

/** What has pieces that cannot be told, as long as something is missing, and why. */
export interface PieceMissing {
  readonly of: string;
  readonly path: string;
  readonly because: readonly Reason[];
}

export const flatPiecesMissing = defineFigure<readonly PieceMissing[]>('flat_pieces_missing', (bench) =>
  ifKnown(asked(bench), (all) =>
    known(all.flatMap(({ of, path, figure }) => (isCannot(figure) ? [{ of, path, because: figure.because }] : []))),
  ),
);

/** Names are told apart: the second sheet of peel ply is `peel (2)`. */
function named(pieces: readonly FlatPiece[]): readonly FlatPiece[] {
  const taken = new Map<string, number>();
  return pieces.map((piece) => {
    const before = taken.get(piece.name) ?? 0;
    taken.set(piece.name, before + 1);
    return before === 0 ? piece : { ...piece, name: `${piece.name} (${before + 1})` };
  });
}
