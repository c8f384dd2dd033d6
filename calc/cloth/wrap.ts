import { type Demand, demand, following, given, notNegative, type Outcome, positive } from '../outcome.ts';

/**
 * How the edge is broken that a ply goes round; metres. A chamfer takes `across` off the face and `down` off the edge.
 */
export type EdgeForm =
  | { readonly kind: 'square' }
  | { readonly kind: 'round'; readonly radius: number }
  | { readonly kind: 'chamfer'; readonly across: number; readonly down: number };

/**
 * An edge that a ply of `thickness` runs over; `height` is all that lies between the ply and the face it lands on.
 * Metres.
 */
export interface WrappedEdge {
  readonly height: number;
  readonly thickness: number;
  readonly toolSide: EdgeForm;
  readonly landingSide: EdgeForm;
}

/**
 * How far past the outline (m) the flat piece must reach to run over an edge and land by `landing` (m): (h + t) + l -
 * (2 - pi/2)(r1 + r2 + t), on the ply's mid-surface. The way round each broken corner is shorter than the way through
 * its square corner, by (2 - pi/2) r round a radius, by across + down - the slope at a chamfer.
 */
export function wrapReach(edge: WrappedEdge, landing: number): Outcome {
  return given([notNegative('the landing', landing)], () => following(wayRound(edge), (way) => way + landing));
}

/**
 * What lands (m) of a piece that reaches `reach` (m) past the outline; negative where it does not come round the edge.
 */
export function landingOf(edge: WrappedEdge, reach: number): Outcome {
  return given([notNegative('the reach', reach)], () => following(wayRound(edge), (way) => reach - way));
}

function wayRound(edge: WrappedEdge): Outcome {
  const { height, thickness, toolSide, landingSide } = edge;
  return given(
    [
      positive('the height of the edge', height),
      positive('the thickness of the ply', thickness),
      ...formDemands(toolSide),
      ...formDemands(landingSide),
      demand(
        downOf(toolSide) + downOf(landingSide) <= height * (1 + 1e-9),
        'the radii or chamfers of the edge are together more than it is high',
      ),
    ],
    () => height + thickness - saved(toolSide) - saved(landingSide) - roundSaving * thickness,
  );
}

/** Two tangents less the quarter of a circle, for a radius of 1. */
const roundSaving = 2 - Math.PI / 2;

function saved(form: EdgeForm): number {
  if (form.kind === 'square') return 0;
  if (form.kind === 'round') return roundSaving * form.radius;
  return form.across + form.down - Math.hypot(form.across, form.down);
}

function downOf(form: EdgeForm): number {
  if (form.kind === 'square') return 0;
  return form.kind === 'round' ? form.radius : form.down;
}

function formDemands(form: EdgeForm): Demand[] {
  if (form.kind === 'square') return [];
  if (form.kind === 'round') return [notNegative('the radius of the edge', form.radius)];
  return [notNegative('the chamfer across the face', form.across), notNegative('the chamfer down the edge', form.down)];
}
