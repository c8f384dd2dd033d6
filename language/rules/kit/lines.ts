import { linePoints } from '../../../calc/bag/line-points.ts';
import { definePick, isKnown, known } from '../../../calc/figure/index.ts';
import { signedDistance } from '../../../calc/outline/distance.ts';
import { type PartFrame, partFrame } from '../../../calc/outline/part.figure.ts';
import type { Point } from '../../../calc/outline/shape.ts';
import { allSaid, hasWord, pastEdge } from '../../../calc/plan/reading.ts';
import type { RecipeContext } from '../rule.ts';
import { allOf, type WorkedStep, workedSteps } from './steps.ts';

/** A feed or a vent where it lies on the part. */
export interface FlowLine {
  readonly worked: WorkedStep;
  readonly name: string;
  /** m outside the edge all round; undefined for a line from point to point */
  readonly around?: number;
  readonly points: readonly Point[];
  /** m outside the edge of each point, negative inside */
  readonly outside: readonly number[];
}

export function linesOf(context: RecipeContext, verb: 'feed' | 'vent'): readonly FlowLine[] {
  const lines = context.ask(flowLines, verb);
  return isKnown(lines) ? lines.value : [];
}

const flowLines = definePick<readonly FlowLine[], 'feed' | 'vent'>('flow_lines', (bench, verb) => {
  const steps = bench.ask(workedSteps);
  const frame = bench.ask(partFrame);
  if (!isKnown(frame)) return frame;
  const lines: FlowLine[] = [];
  if (isKnown(steps)) for (const worked of allOf(steps.value, verb)) lines.push(lineOf(worked, verb, frame.value));
  return known(lines);
});

function lineOf(worked: WorkedStep, verb: 'feed' | 'vent', frame: PartFrame): FlowLine {
  const { step } = worked;
  const name = step.name ?? verb;
  const points: Point[] = [];
  const outside: number[] = [];
  if (hasWord(allSaid(step), 'perimeter')) return { worked, name, around: pastEdge(step) ?? 0, points, outside };
  for (const point of linePoints(frame, step)) {
    if ('problem' in point) continue;
    points.push(point);
    const distance = signedDistance(frame.shape, point);
    if (typeof distance === 'number') outside.push(distance);
  }
  return { worked, name, around: undefined, points, outside };
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The shortest way from a point to a line through points, m. */
export function toLine(point: Point, line: readonly Point[]): number {
  const [only] = line;
  if (only === undefined) return Number.POSITIVE_INFINITY;
  return line
    .slice(1)
    .reduce((least, end, i) => Math.min(least, toSegment(point, line[i] ?? only, end)), apart(point, only));
}

function toSegment(point: Point, from: Point, to: Point): number {
  const length = apart(from, to) ** 2;
  if (length === 0) return apart(point, from);
  const along = ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length;
  const at = Math.max(0, Math.min(1, along));
  return apart(point, { x: from.x + at * (to.x - from.x), y: from.y + at * (to.y - from.y) });
}

/** How near a feed comes to a vent, m. Between two runs the nearest ends count. */
export function nearest(feed: FlowLine, vent: FlowLine): number {
  if (vent.around !== undefined) {
    const around = vent.around;
    return feed.outside.reduce((least, outside) => Math.min(least, around - outside), Number.POSITIVE_INFINITY);
  }
  return [
    ...feed.points.map((point) => toLine(point, vent.points)),
    ...vent.points.map((point) => toLine(point, feed.points)),
  ].reduce((least, way) => Math.min(least, way), Number.POSITIVE_INFINITY);
}

/** Whether a vent lies on the part between two feeds, where their fronts close on each other. */
export function liesBetween({ points, outside }: FlowLine, one: FlowLine, other: FlowLine): boolean {
  const way = Math.min(...other.points.map((point) => toLine(point, one.points)));
  return (
    points.length > 0 &&
    outside.every((far) => far < 0) &&
    points.every((point) => toLine(point, one.points) < way && toLine(point, other.points) < way)
  );
}
