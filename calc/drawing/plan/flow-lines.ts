import { lineLength, processSteps } from '../../bag/bag.figure.ts';
import { linePoints } from '../../bag/line-points.ts';
import { quantity, type Text, text } from '../../figure/figure.ts';
import { type Bench, isKnown } from '../../figure/index.ts';
import type { Step } from '../../model/index.ts';
import { isImpossible } from '../../outcome.ts';
import type { Contour } from '../../outline/contour.ts';
import type { PartFrame } from '../../outline/part.figure.ts';
import { origin } from '../../outline/shape.ts';
import { allSaid, hasWord, pastEdge } from '../../plan/reading.ts';
import { LENGTH } from '../../quantity/index.ts';
import type { DrawnItem } from '../drawing.ts';
import { offsetContours } from './contours.ts';
import { type Pen, penOf, type Thing, type Writing } from './thing.ts';
import { centredAt, pastOutline, tagOf } from './words.ts';

interface FlowLine {
  readonly lines: readonly Contour[];
  readonly closed: boolean;
  readonly where: Text;
  /** m, of a line all round the part */
  readonly past?: number;
}

/** Feeds and vents where they lie: through their points, or round the part. */
export function flowThings(bench: Bench, frame: PartFrame, writing: Writing): Thing[] {
  const steps = bench.ask(processSteps);
  if (!isKnown(steps)) return [];
  return steps.value
    .filter(({ verb }) => verb === 'feed' || verb === 'vent')
    .map((step): Thing => {
      const source = { path: step.path, name: step.name ?? step.verb };
      const line = lineOf(step, frame);
      const length = bench.ask(lineLength, step.path);
      return {
        layer: 'flow',
        source,
        what: text('{verb} {name}', { verb: step.verb, name: source.name }),
        where: line.where,
        size: isKnown(length) ? text('{length} long', { length: quantity(length.value, LENGTH) }) : text('cannot tell'),
        ...(line.past === undefined ? {} : { tag: tagOf(source.name, line.past) }),
        items: drawn(line, source.name, penOf('flow', source), writing),
      };
    });
}

function lineOf(step: Step, frame: PartFrame): FlowLine {
  const said = allSaid(step);
  if (hasWord(said, 'perimeter')) {
    const past = pastEdge(step) ?? 0;
    return {
      lines: offsetContours({ shape: frame.shape, centre: origin }, past),
      closed: true,
      past,
      where: text('round the part, {past}', { past: pastOutline(past) }),
    };
  }
  const points = linePoints(frame, step).flatMap((point) => (isImpossible(point) ? [] : [point]));
  const [first, last] = [points[0], points.at(-1)];
  const where =
    first === undefined || last === undefined
      ? text('cannot tell')
      : points.length === 1
        ? centredAt(first)
        : text('from ({x1}, {y1}) to ({x2}, {y2})', {
            x1: quantity(first.x, LENGTH),
            y1: quantity(first.y, LENGTH),
            x2: quantity(last.x, LENGTH),
            y2: quantity(last.y, LENGTH),
          });
  return { lines: points.length === 0 ? [] : [points], closed: false, where };
}

function drawn({ lines, closed }: FlowLine, name: string, pen: Pen, { height }: Writing): DrawnItem[] {
  return lines.flatMap((line): DrawnItem[] => {
    const [first] = line;
    if (first === undefined) return [];
    if (closed) return [pen.line(line)];
    const tag = pen.text({ x: first.x + height / 2, y: first.y + height / 2 }, height, name);
    // a feed at one point is a port
    if (line.length === 1) return [pen.circle(first, height / 2), tag];
    return [pen.line(line, { closed: false }), tag];
  });
}
