import {
  allKnown,
  type Bench,
  cannot,
  defineFigure,
  type Figure,
  ifKnown,
  known,
  knownBy,
  quantity,
  reason,
  text,
  typed,
  usual,
  whenKnown,
  worked,
} from '../figure/index.ts';
import { layerThickness } from '../laminate/thickness.figure.ts';
import { type Edge, UNKNOWN } from '../model/index.ts';
import { isImpossible } from '../outcome.ts';
import { inRecipe } from '../outline/part.figure.ts';
import { LENGTH, type Quantity } from '../quantity/index.ts';
import { laidLayer, laidStack } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { grooveOf, layersBetween, reachesEdge, wrapTarget } from '../stack/order.ts';
import { LANDING } from './habits.ts';
import { type EdgeForm, landingOf, wrapReach as reachFormula } from './wrap.ts';

/** What lies between a wrapped ply and the face that it lands on. */
export interface EdgeHeight {
  /** m */
  readonly height: number;
  /** names of the layers that make it up */
  readonly layers: readonly string[];
}

const wrapped = (
  bench: Bench,
  key: string,
): Figure<{ readonly ply: LaidLayer; readonly target: LaidLayer; readonly between: readonly LaidLayer[] }> =>
  whenKnown({ ply: bench.ask(laidLayer, key), stack: bench.ask(laidStack) }, ({ ply, stack }) => {
    const at = inRecipe(bench, ply.path);
    const { extent } = ply.layer;
    if (extent.kind !== 'wrap')
      return cannot(reason('typed', text('{name} is not wrapped', { name: ply.name }), { at }));
    const target = wrapTarget(stack.layers, ply);
    if (target === undefined || target === ply) {
      const words =
        extent.target === undefined
          ? text('it is not said what {name} lands on', { name: ply.name })
          : text('no layer is called {name}', { name: extent.target });
      return cannot(reason('typed', words, { at }));
    }
    const between = layersBetween(stack.layers, ply, target).filter(
      (l) => reachesEdge(l) && grooveOf(stack.layers, l) === undefined,
    );
    return known({ ply, target, between });
  });

/** Edge height h of a wrapped ply: all layers that reach the edge between it and the face it lands on. */
export const edgeHeight = defineFigure<EdgeHeight>('edge_height', (bench, key) =>
  ifKnown(wrapped(bench, key), (wrap) =>
    ifKnown(allKnown(wrap.between.map((laid) => bench.ask(layerThickness, laid.key))), (each, reasons) => {
      const height = each.reduce((sum, t) => sum + t, 0);
      const layers = wrap.between.map((laid) => laid.name);
      const words = text('{height} of edge: {layers}', {
        height: quantity(height, LENGTH),
        layers: layers.join(', ') || 'no layer',
      });
      return known({ height, layers }, reason('computed', words, { reasons }));
    }),
  ),
);

/** A chamfer takes 45 deg where no angle is typed; its depth is measured down the edge. */
export function edgeForm(edge: Edge | undefined): EdgeForm {
  if (edge === undefined || edge.kind === 'square') return { kind: 'square' };
  if (edge.kind === 'round') return { kind: 'round', radius: edge.radius.si };
  const down = edge.depth?.si ?? 0;
  return { kind: 'chamfer', down, across: down / Math.tan(edge.angle?.si ?? Math.PI / 4) };
}

export interface WrapReach {
  /** past the outline, m: what is typed, else what is needed */
  readonly reach: number;
  /** what lies on the face after all, m; 0 where the piece does not come round the edge */
  readonly landing: number;
  /** past the outline for the landing that is wanted, m */
  readonly needed: number;
  /** the landing that is wanted, m */
  readonly wanted: number;
  /** `oversize` as typed, m */
  readonly typed?: number;
  /** of the edge with nothing but what lies between, m */
  readonly height: number;
  /** of the ply, m */
  readonly thickness: number;
  /** layers that make up the edge */
  readonly over: readonly string[];
  readonly onto: string;
}

/** How far a wrapped ply's flat piece reaches past the outline, and how much of it lands. */
export const wrapReach = defineFigure<WrapReach>('wrap_reach', (bench, key) =>
  whenKnown(
    { wrap: wrapped(bench, key), edge: bench.ask(edgeHeight, key), thickness: bench.ask(layerThickness, key) },
    (v, reasons) => {
      const { ply, target } = v.wrap;
      const { extent, oversize } = ply.layer;
      const at = inRecipe(bench, ply.path);
      const said = extent.kind === 'wrap' ? extent.landing : undefined;
      const wanted: Figure<Quantity> =
        said === undefined
          ? ifKnown(usual(bench, LANDING), (usual, more) => knownBy(quantity(usual, LENGTH), more))
          : typed(said, text('the landing of {ply}', { ply: ply.name }), at);
      return ifKnown(wanted, (landing, more) => {
        const form = edgeForm(bench.recipe.part?.edge);
        const edge = { height: v.edge.height, thickness: v.thickness, toolSide: form, landingSide: form };
        const needed = reachFormula(edge, landing.si);
        const found = reached(needed, oversize === UNKNOWN ? undefined : oversize?.si, (reach) =>
          landingOf(edge, reach),
        );
        if (isImpossible(found)) return worked<WrapReach>(found, '', { at });
        const words = text(
          '(h + t) + landing - (2 - pi/2)(r1 + r2 + t) on the mid-surface: {needed} past the outline for a landing of {landing}',
          {
            needed: quantity(found.needed, LENGTH),
            landing,
          },
        );
        const value = {
          ...found,
          wanted: landing.si,
          height: v.edge.height,
          thickness: v.thickness,
          over: v.edge.layers,
          onto: target.name,
        };
        const typedWords =
          found.typed === undefined
            ? []
            : [reason('typed', text('oversize {typed}', { typed: quantity(found.typed, LENGTH) }), { at })];
        return known(value, ...typedWords, reason('computed', words, { at, reasons: [...reasons, ...more] }));
      });
    },
  ),
);

function reached(
  needed: ReturnType<typeof reachFormula>,
  typedReach: number | undefined,
  landing: (reach: number) => ReturnType<typeof landingOf>,
) {
  if (isImpossible(needed)) return needed;
  const reach = typedReach ?? needed;
  const lands = landing(reach);
  if (isImpossible(lands)) return lands;
  return { needed, reach, landing: Math.max(0, lands), ...(typedReach === undefined ? {} : { typed: typedReach }) };
}
