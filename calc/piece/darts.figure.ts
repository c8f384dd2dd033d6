import { dartNeed } from '../cloth/darts.figure.ts';
import type { BendNeed } from '../cloth/darts.ts';
import { DART_GAP, DART_KEEP_OFF, NARROWEST_DART } from '../cloth/habits.ts';
import { wrapReach } from '../cloth/wrap.figure.ts';
import {
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  type FigureDefinition,
  ifKnown,
  isKnown,
  known,
  knownBy,
  type Reason,
  reason,
  text,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { keptWith } from '../kept.ts';
import { following } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { blockedOn, type ClothContours, clothContours } from './cloth-contours.figure.ts';
import { edgeTurns } from './edge-turns.ts';
import type { Dart } from './flat-piece.ts';
import { placedContour } from './footprint-contour.ts';
import { type DartShape, placeDarts } from './place-darts.ts';
import { seamsOnEachOther } from './seams.ts';
import { phaseAway } from './stagger.ts';

/** Whether darts are cut in a layer. */
export const isDarted = ({ layer }: LaidLayer): boolean =>
  layer.extent.kind === 'wrap' && layer.darts !== undefined && layer.darts !== 0;

interface Ground {
  readonly outline: Contour;
  readonly contours: ClothContours;
  readonly bends: readonly BendNeed[];
  readonly shape: DartShape;
}

/** More darts than any piece has; a slip of the key must not hold up the editor. */
const mostDarts = 1000;

/** What darts are placed on. A typed number is of darts alone: relief slits are cut where it is left to be computed. */
const dartGround = (bench: Bench, laid: LaidLayer): Figure<Ground> =>
  whenKnown(
    {
      contours: bench.ask(clothContours, laid.key),
      need: bench.ask(dartNeed, laid.key),
      wrap: bench.ask(wrapReach, laid.key),
      keepOff: usual(bench, DART_KEEP_OFF),
      gap: usual(bench, DART_GAP),
      narrowest: usual(bench, NARROWEST_DART),
    },
    ({ contours, need, wrap, keepOff, gap, narrowest }, reasons) => {
      const bends = laid.layer.darts === 'auto' ? need.bends : need.bends.map((bend) => ({ ...bend, slits: 0 }));
      const shape = { reach: wrap.reach, keepOff, gap, narrowest };
      if (!(need.darts + need.slits <= mostDarts && (need.typed?.darts ?? 0) <= mostDarts)) {
        const words = text('{layer} would have more than {most} darts', { layer: laid.name, most: mostDarts });
        return cannot(reason('computed', words, { at: inRecipe(bench, laid.path) }));
      }
      return worked(
        following(placedContour(contours.footprint.placed, contours.footprint.stretch), (outline) => ({
          outline,
          contours,
          bends,
          shape,
        })),
        'the bends of the outline',
        { reasons },
      );
    },
  );

const kept = keptWith<Contour, readonly Dart[]>();

/** The darts, off those of other plies. */
const placed = (ground: Ground, others: readonly Dart[]): readonly Dart[] => {
  const rim = ground.contours.flats[0]?.outer ?? ground.outline;
  const bends = ground.bends.map(({ first, last, darts, slits, width }) => [first, last, darts, slits, width]);
  const { centre, angle } = ground.contours.footprint.placed;
  const key = JSON.stringify([
    bends,
    ground.shape,
    centre,
    angle,
    others.map(({ mouth, tip, width }) => [mouth, tip, width]),
  ]);
  return kept(rim, key, () => placedOn(rim, ground, others));
};

const placedOn = (
  rim: Contour,
  { outline, contours, bends, shape }: Ground,
  others: readonly Dart[],
): readonly Dart[] => {
  const turns = edgeTurns(outline);
  const phase = phaseAway(turns, bends, shape, others);
  return placeDarts(outline, rim, turns, bends, shape, { phase, others, blocked: blockedOn(rim, contours) });
};

/** Darts as they lie where no ply below or above matters. */
const evenDarts = defineFigure<readonly Dart[]>('even_darts', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  const ground = dartGround(bench, laid.value);
  return isKnown(ground) ? known(placed(ground.value, [])) : ground;
});

/** The darts of a ply moved off those of the two darted plies next to it, where those have them evenly. */
const movedDarts = defineFigure<readonly Dart[]>('moved_darts', (bench, key) =>
  whenKnown(
    { laid: bench.ask(laidLayer, key), beside: dartsBeside(bench, key, evenDarts) },
    ({ laid, beside }, reasons) =>
      ifKnown(dartGround(bench, laid), (ground) => moved(bench, laid, ground, beside, reasons)),
  ),
);

/** The darts of the darted plies below and above a ply, as far as they are known. */
const dartsBeside = (bench: Bench, key: string, darts: FigureDefinition<readonly Dart[]>): Figure<readonly Dart[]> =>
  whenKnown({ laid: bench.ask(laidLayer, key), stack: bench.ask(laidStack) }, ({ laid, stack }, reasons) => {
    const darted = stack.layers.filter(isDarted);
    const at = darted.indexOf(laid);
    const beside = [darted[at - 1], darted[at + 1]].flatMap((other) =>
      other === undefined ? [] : [bench.ask(darts, other.key)],
    );
    return knownBy(
      beside.flatMap((figure) => (isKnown(figure) ? figure.value : [])),
      reasons,
    );
  });

function moved(bench: Bench, laid: LaidLayer, ground: Ground, beside: readonly Dart[], reasons: readonly Reason[]) {
  const darts = placed(ground, beside);
  const words =
    darts.length === 1
      ? text('1 dart or slit, moved off those of the plies next to it', {})
      : text('{count} darts and slits, moved off those of the plies next to it', { count: darts.length });
  return worked<readonly Dart[]>(darts, words, { at: inRecipe(bench, laid.path), reasons });
}

/**
 * The darts and slits of a wrapped ply, in the frame of the part. Every second darted ply has them evenly over each bend; those
 * between move theirs off the darts of the ply below and of the ply above. Where they have no room for that, the even ones give
 * way in their turn. So one ply hangs on four others at most.
 */
export const placedDarts = defineFigure<readonly Dart[]>('placed_darts', (bench, key) =>
  whenKnown({ laid: bench.ask(laidLayer, key), stack: bench.ask(laidStack) }, ({ laid, stack }) => {
    if (!isDarted(laid)) return known([]);
    if (stack.layers.filter(isDarted).indexOf(laid) % 2 === 1) return bench.ask(movedDarts, key);
    const [even, beside] = [bench.ask(evenDarts, key), dartsBeside(bench, key, movedDarts)];
    return whenKnown({ ground: dartGround(bench, laid), even, beside }, ({ ground, even, beside }, reasons) =>
      seamsOnEachOther(even, beside, ground.shape.gap).length === 0
        ? bench.ask(evenDarts, key)
        : moved(bench, laid, ground, beside, reasons),
    );
  }),
);
