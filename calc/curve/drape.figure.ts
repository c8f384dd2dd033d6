import { WIDEST_DART } from '../cloth/habits.ts';
import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  known,
  quantity,
  text,
  type Usual,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { keptWith } from '../kept.ts';
import { layerCloth } from '../laminate/fraction.figure.ts';
import type { Cloth } from '../model/material.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { contourBox } from '../outline/contour-measure.ts';
import { areaOf, offsetContour } from '../outline/contour-offset.ts';
import { moved, transformed } from '../outline/transform.ts';
import { clothContours } from '../piece/cloth-contours.figure.ts';
import { grownContours, placedContour } from '../piece/footprint-contour.ts';
import { layerJoins } from '../piece/joins.figure.ts';
import { lanesOf } from '../piece/lanes.ts';
import { ANGLE } from '../quantity/index.ts';
import { laidDirections } from '../stack/directions.ts';
import { layerFootprint } from '../stack/footprint.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { edgeMoment, halfWidth, leftOver, shearAngle, thinned } from './drape.ts';
import { DRAPE_BRAID, DRAPE_RANDOM, DRAPE_STITCHED, DRAPE_UNI, DRAPE_WOVEN } from './habits.ts';
import { gaussCurvature } from './surface.ts';
import { toolCurve } from './tool.figure.ts';

/** A layer of cloth on a face that is curved both ways. */
export interface Drape {
  /** length that its edge has too much, all round, m; negative where it is too short */
  readonly excess: number;
  /** by which its fibres would have to leave the square, and what the cloth takes, rad */
  readonly shear: number;
  readonly locks: number;
  /** of the excess, what the cloth does not take up, m; negative where it is too short */
  readonly left: number;
  /** darts of the widest that is cut, or relief slits that open as wide, for what is left */
  readonly darts: number;
  /** the widest dart that is cut, m */
  readonly widest: number;
}

const usualOf = ({ style, layers }: Cloth): Usual => {
  const directions = layers.filter(({ angle }) => angle !== undefined).length;
  if (style === 'random') return DRAPE_RANDOM;
  if (style === 'uni' || (style === 'stitched' && directions !== 2)) return DRAPE_UNI;
  return style === 'braid' ? DRAPE_BRAID : style === 'woven' ? DRAPE_WOVEN : DRAPE_STITCHED;
};

/** The piece that folds most, else the one that shears most. */
const mostOf = (pieces: readonly Drape[]): Drape | undefined =>
  [...pieces].sort((a, b) => Math.abs(b.left) - Math.abs(a.left) || b.shear - a.shear)[0];

/** What the double curvature of the tool asks of a layer of cloth, of several pieces the worst; undefined on a flat tool and on a cylinder. */
export const layerDrape = defineFigure<Drape | undefined>('layer_drape', (bench, key) => {
  const curve = toolCurve(bench);
  const curvature = curve === undefined ? 0 : gaussCurvature(curve.curvature);
  if (curve === undefined || curvature === 0) return known(undefined);
  return whenKnown({ laid: bench.ask(laidLayer, key), cloth: bench.ask(layerCloth, key) }, ({ laid, cloth }) => {
    const inputs = {
      outlines: onTheFace(bench, laid),
      locks: usual(bench, usualOf(cloth)),
      widest: usual(bench, WIDEST_DART),
    };
    return whenKnown(inputs, ({ outlines, locks, widest }, reasons) => {
      const fibre = laidDirections(cloth, laid.angle ?? 0, laid.turnedOver)[0]?.angle ?? 0;
      const each = outlines.map((outline) =>
        following(excessOf(outline, curvature), (excess) =>
          following(shearAngle(curvature, aboutItself(outline), fibre), (shear) =>
            following(leftOver(excess, shear, locks), (left): Outcome<Drape> => {
              const darts = widest > 0 ? Math.max(0, Math.ceil(Math.abs(left) / widest - 1e-9)) : 0;
              return { excess, shear, locks, left, darts, widest };
            }),
          ),
        ),
      );
      const found = each.find(isImpossible) ?? mostOf(each.filter((drape): drape is Drape => !isImpossible(drape)));
      const words = text(
        'the face is curved both ways: the excess at the edge is the curvature both ways times the distance to the edge, added up over the piece; the cloth shears by the curvature times the area between two crossing fibres and the corner, and takes {locks}',
        { locks: quantity(locks, ANGLE) },
      );
      const source = 'Bertrand, Diguet and Puiseux 1848; Chebyshev 1878';
      return worked<Drape | undefined>(found, words, { at: curve.at, source, reasons });
    });
  });
});

/** What a core in one sheet has too much at its edge, m: it does not shear. 0 but on a tool that is curved both ways. */
export const coreExcess = defineFigure<number>('core_excess', (bench, key) => {
  const curve = toolCurve(bench);
  const curvature = curve === undefined ? 0 : gaussCurvature(curve.curvature);
  if (curve === undefined || curvature === 0) return known(0);
  return ifKnown(bench.ask(layerFootprint, key), (footprint, reasons) => {
    const found = following(placedContour(footprint.placed), (outline) => excessOf(outline, curvature));
    return worked(found, 'the curvature both ways times the distance to the edge, added up over the sheet', {
      at: curve.at,
      source: 'Bertrand, Diguet and Puiseux 1848',
      reasons,
    });
  });
});

const moments = keptWith<Contour, Outcome>();

/** It is asked for by every ply with the same outline, and again with each edit: it is kept with the outline. */
const excessOf = (outline: Contour, curvature: number): Outcome =>
  following(
    moments(outline, 'edge', () => {
      const line = thinned(outline);
      return edgeMoment((inset) => following(offsetContour(line, -inset), areaOf), halfWidth(line));
    }),
    (moment) => curvature * moment,
  );

/**
 * The pieces of a layer on the face of the tool: round the edge of a part no wrap lies on it, and what is joined of lanes drapes
 * lane by lane.
 */
function onTheFace(bench: Bench, laid: LaidLayer): Figure<readonly Contour[]> {
  const inputs = { contours: bench.ask(clothContours, laid.key), joins: bench.ask(layerJoins, laid.key) };
  return whenKnown(inputs, ({ contours: { footprint, out }, joins }) => {
    const { placed, inset, shorter } = footprint;
    const past = laid.layer.extent.kind === 'wrap' ? 0 : out;
    const found = following(grownContours({ placed, out: past - inset, shorter }), (flats) =>
      flats.flatMap(({ outer }) =>
        joins === undefined ? [outer] : lanesOf(outer, joins.way, joins.at, joins.lap).flat(),
      ),
    );
    return worked(found, text('what of {layer} lies on the face', { layer: laid.name }));
  });
}

/** A piece about its own middle, from which it is laid outwards. */
function aboutItself(contour: Contour): Contour {
  const [low, high] = contourBox(contour);
  return transformed(contour, moved(-(low.x + high.x) / 2, -(low.y + high.y) / 2));
}
