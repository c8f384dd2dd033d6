import {
  defineFigure,
  factOf,
  ifKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { keptWith } from '../kept.ts';
import { factPlace, layerCloth, layerMaterial } from '../laminate/fraction.figure.ts';
import { following, type Outcome } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { dartWords } from '../piece/dart-words.ts';
import { type EdgeStretch, edgeTurns } from '../piece/edge-turns.ts';
import { placedContour } from '../piece/footprint-contour.ts';
import { LENGTH, NUMBER } from '../quantity/index.ts';
import { layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import { type BendNeed, type DartHabit, dartNeeds, dartTotal, shareDarts } from './darts.ts';
import type { Overhang } from './excess.ts';
import { DART_GAP, DART_KEEP_OFF, LEAST_EXCESS, USUAL_SHEAR, WIDEST_DART } from './habits.ts';
import { wrapReach } from './wrap.figure.ts';

export interface DartNeed {
  /** bend by bend, in walking order of the outline */
  readonly bends: readonly BendNeed[];
  /** of the whole piece */
  readonly darts: number;
  readonly slits: number;
  /** length too much at the free edge, all bends, m */
  readonly excess: number;
  /** of the widest dart that is needed, m */
  readonly width: number;
  /** of a dart from the free edge, m */
  readonly depth: number;
  /** as typed, for the whole piece; the width that each has at the bend where it is most too wide, and may have there, m */
  readonly typed?: { readonly darts: number; readonly width: number; readonly widest: number };
  /** the widest dart that is cut where there is room for more, m */
  readonly widest: number;
}

const kept = keptWith<readonly EdgeStretch[], Outcome<readonly BendNeed[]>>();

const keptNeeds = (stretches: readonly EdgeStretch[], { reach, landing }: Overhang, habit: DartHabit) =>
  kept(stretches, JSON.stringify([reach, landing, habit]), () => dartNeeds(stretches, { reach, landing }, habit));

/** The bend whose darts are most too wide. */
const mostTooWide = (bends: readonly BendNeed[]): Pick<BendNeed, 'width' | 'widest'> =>
  bends.reduce((most, { width, widest }) => (width * most.widest > most.width * widest ? { width, widest } : most), {
    width: 0,
    widest: 1,
  });

/** Share of the excess that a cloth takes up by shear. */
const shearOf = defineFigure<number>('shear', (bench, key) =>
  ifKnown(bench.ask(layerMaterial, key), (material) => {
    if (material.shear !== undefined) {
      return ifKnown(
        factOf(
          material.shear,
          text('what {material} takes up by shear', { material: material.name }),
          factPlace(material, 'shear'),
        ),
        (shear, reasons) => knownBy(shear.si, reasons),
      );
    }
    return ifKnown(bench.ask(layerCloth, key), (cloth) => {
      const share = USUAL_SHEAR[cloth.style];
      const words = text('{share} of the excess taken up by shear, usual for {style} cloth', {
        share: quantity(share, NUMBER),
        style: cloth.style,
      });
      return known(share, reason('trade', words, { source: 'from memory; try the cloth on a corner' }));
    });
  }),
);

/** Where a wrapped ply has too much length round the outline, and the darts or slits that deal with it. */
export const dartNeed = defineFigure<DartNeed>('dart_need', (bench, key) =>
  whenKnown(
    {
      laid: bench.ask(laidLayer, key),
      footprint: bench.ask(layerFootprint, key),
      wrap: bench.ask(wrapReach, key),
      shear: bench.ask(shearOf, key),
      widest: usual(bench, WIDEST_DART),
      keepOff: usual(bench, DART_KEEP_OFF),
      least: usual(bench, LEAST_EXCESS),
      tongue: usual(bench, DART_GAP),
    },
    ({ laid, footprint, wrap, shear, widest, keepOff, least, tongue }, reasons) => {
      const asked = laid.layer.darts;
      const need = following(placedContour(footprint.placed, footprint.stretch), (outline) =>
        following(keptNeeds(edgeTurns(outline), wrap, { shear, widest, keepOff, least, tongue }), (bends) => {
          const total = dartTotal(bends);
          const widestOf = (of: readonly BendNeed[]) => of.reduce((most, b) => Math.max(most, b.width), 0);
          const base: DartNeed = {
            ...total,
            bends,
            widest,
            width: widestOf(bends),
            depth: wrap.reach - keepOff,
            excess: bends.reduce((sum, b) => sum + b.excess, 0),
          };
          if (typeof asked !== 'number') return base;
          return following(shareDarts(bends, asked), (shared) => ({
            ...base,
            bends: shared,
            typed: { darts: asked, ...mostTooWide(shared.filter((b) => b.excess > 0)) },
          }));
        }),
      );
      const words = text(
        'turn times (reach + landing) is too long at the free edge, less what shear takes up, in darts of {widest} at most',
        { widest: quantity(widest, LENGTH) },
      );
      const typedWords =
        typeof asked === 'number' ? [reason('typed', dartWords(asked), { at: inRecipe(bench, laid.path) })] : [];
      return worked(need, words, { at: inRecipe(bench, laid.path), reasons: [...typedWords, ...reasons] });
    },
  ),
);
