import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerMaterial } from '../laminate/fraction.figure.ts';
import { heightSoFar } from '../laminate/height.figure.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { type Layer, UNKNOWN } from '../model/index.ts';
import { following, isImpossible, type Outcome } from '../outcome.ts';
import { LENGTH } from '../quantity/index.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import { closedCutRadius, cutMovement, cutOpening, leastBendRadius, type Stretch, stretchAt } from './surface.ts';
import { layerStretch, type ToolCurve, toolCurve } from './tool.figure.ts';

/** Saw cuts of a score, m. */
export interface ScoreCuts {
  readonly pitch: number;
  readonly width: number;
  readonly depth: number;
}

/** A score is a grid of cuts; untyped, a saw cut of 1 mm to the last millimetre of the sheet. */
export const scoreCuts = (score: NonNullable<Layer['score']>, pitch: number, thickness: number): ScoreCuts => ({
  pitch,
  width: score.width?.si ?? 0.001,
  depth: score.depth?.si ?? Math.max(thickness / 2, thickness - 0.001),
});

/** A core bent one way over its tool. */
export interface BentWay {
  readonly way: 'along' | 'across';
  /** of what keeps its length, m: the middle of the sheet, or the bottom of its cuts */
  readonly radius: number;
  /** of a scored core */
  readonly cuts?: {
    /** whether they lie on the outside of the bend */
    readonly opens: boolean;
    /** by how much the mouth of each opens or closes, m */
    readonly movement: number;
    /** where they lie on the inside of the bend: the radius at which they have closed, m */
    readonly closed: number;
    /** what they gain by opening, or lose, m3 for each m2 */
    readonly gain: number;
  };
}

export interface CoreBend {
  /** smallest radius to which the sheet bends cold and unscored, m, where its material says it */
  readonly least?: number;
  readonly cuts?: ScoreCuts;
  readonly ways: readonly BentWay[];
  /** how much longer than on the tool face the sheet is cut: what keeps its length lies at this height */
  readonly stretch: Stretch;
}

/** How a core is bent over its tool; undefined on a flat tool. */
export const coreBend = defineFigure<CoreBend | undefined>('core_bend', (bench, key) => {
  const curve = toolCurve(bench);
  if (curve === undefined) return known(undefined);
  const inputs = {
    core: bench.ask(laidLayer, key),
    top: bench.ask(heightSoFar, key),
    thickness: bench.ask(layerThickness, key),
  };
  return whenKnown(inputs, ({ core: { layer }, top, thickness }, reasons) => {
    const { score } = layer;
    const cuts = score?.pitch === undefined ? undefined : scoreCuts(score, score.pitch.si, thickness);
    const side = score?.from ?? awayFromSight(bench);
    const bent = (['along', 'across'] as const).flatMap((way) =>
      curve.curvature[way] === 0 ? [] : [bentWay(curve, way, top, thickness, cuts, side)],
    );
    const problem = bent.find(isImpossible);
    if (problem !== undefined) return worked<CoreBend | undefined>(problem, '', { at: curve.at });
    const ways = bent.filter((way): way is BentWay => !isImpossible(way));
    const least = leastOf(bench, key, thickness);
    const value = following(
      stretchAt(curve.curvature, Math.max(0, keptHeight(curve, ways[0]?.way ?? 'along', top, thickness, cuts, side))),
      (stretch): CoreBend => ({
        ways,
        stretch,
        ...(least === undefined ? {} : { least }),
        ...(cuts === undefined ? {} : { cuts }),
      }),
    );
    const words =
      cuts === undefined
        ? text('the middle of the sheet keeps its length')
        : text('the bottom of the cuts, {depth} deep, keeps its length', { depth: quantity(cuts.depth, LENGTH) });
    return worked<CoreBend | undefined>(value, words, { at: curve.at, reasons });
  });
});

/** The face that is not looked at is cut into, where the part says which one is. */
function awayFromSight(bench: Bench): 'tool' | 'bag' | undefined {
  const seen = bench.recipe.part?.cosmetic;
  return seen === undefined ? undefined : seen === 'tool face' ? 'bag' : 'tool';
}

/** Whether the cuts lie on the outside of a bend: in a hollow the side of the tool, on a crown that of the bag. */
const opensOn = (curvature: number, side: 'tool' | 'bag' | undefined): boolean =>
  side === undefined || (side === 'tool') === curvature > 0;

/** Height above the tool face of what keeps its length, m. */
function keptHeight(
  { curvature }: ToolCurve,
  way: 'along' | 'across',
  top: number,
  thickness: number,
  cuts: ScoreCuts | undefined,
  side: 'tool' | 'bag' | undefined,
): number {
  if (cuts === undefined) return top - thickness / 2;
  const fromTool = side === undefined ? curvature[way] > 0 : side === 'tool';
  return fromTool ? top - thickness + cuts.depth : top - cuts.depth;
}

function bentWay(
  curve: ToolCurve,
  way: 'along' | 'across',
  top: number,
  thickness: number,
  cuts: ScoreCuts | undefined,
  side: 'tool' | 'bag' | undefined,
): Outcome<BentWay> {
  const curvature = curve.curvature[way];
  const height = Math.max(0, keptHeight(curve, way, top, thickness, cuts, side));
  return following(stretchAt(curve.curvature, height), (stretch): Outcome<BentWay> => {
    const radius = stretch[way] / Math.abs(curvature);
    if (cuts === undefined) return { way, radius };
    const opens = opensOn(curvature, side);
    return following(cutMovement({ ...cuts, radius }), (movement) =>
      following(closedCutRadius(cuts), (closed) =>
        following(cutOpening(cuts.depth, radius), (gain): BentWay => {
          // cuts that close lose no more than they have
          const lost = Math.max(-gain, -(cuts.width / cuts.pitch) * cuts.depth);
          return { way, radius, cuts: { opens, movement, closed, gain: opens ? gain : lost } };
        }),
      ),
    );
  });
}

/** Smallest radius by what the material says of the sheet that comes nearest in thickness, m. */
function leastOf(bench: Bench, key: string, thickness: number): number | undefined {
  const material = bench.ask(layerMaterial, key);
  const said = isKnown(material) ? (material.value.bends ?? []) : [];
  const told = said.flatMap(({ value }) => (value === UNKNOWN ? [] : [value]));
  const apart = (at: number | undefined) => (at === undefined ? 0 : Math.abs(Math.log(at / thickness)));
  const nearest = [...told].sort((a, b) => apart(a.thickness?.si) - apart(b.thickness?.si))[0];
  if (nearest === undefined) return undefined;
  const least = leastBendRadius(thickness, { radius: nearest.value.si, at: nearest.thickness?.si ?? thickness });
  return isImpossible(least) ? undefined : least;
}

/** What the cuts of a core gain as they open over a curved tool, or lose as they close; m3 for each m2, 0 on a flat tool. */
export function cutsGain(bench: Bench, key: string): Figure<number> {
  if (toolCurve(bench) === undefined) return known(0);
  return ifKnown(bench.ask(coreBend, key), (bend) => {
    const gain = (bend?.ways ?? []).reduce((sum, { cuts }) => sum + (cuts?.gain ?? 0), 0);
    const words = text('bent over the tool the cuts open or close by depth squared over twice the radius');
    return known(gain, reason('computed', words, { at: toolCurve(bench)?.at }));
  });
}

/** How much longer than on the tool face a layer is cut: a core by what keeps its length as it is bent. */
export const cutStretch = defineFigure<Stretch | undefined>('cut_stretch', (bench, key) => {
  if (toolCurve(bench) === undefined) return known(undefined);
  return ifKnown(bench.ask(laidLayer, key), (laid) => {
    const bend = laid.layer.kind === 'core' ? bench.ask(coreBend, key) : undefined;
    return bend !== undefined && isKnown(bend)
      ? knownBy(bend.value?.stretch, bend.reasons)
      : bench.ask(layerStretch, key);
  });
});
