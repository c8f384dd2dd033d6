import type { Step } from '../model/index.ts';
import type { Outcome } from '../outcome.ts';
import { type PartFrame, placedPoint } from '../outline/part.figure.ts';
import type { Point } from '../outline/shape.ts';
import { allSaid, pastEdge } from '../plan/reading.ts';

/** The points that a feed or a vent runs through: as typed, or across the part along one of its ends (`along nose`). */
export function linePoints(frame: PartFrame, step: Step): readonly Outcome<Point>[] {
  const said = allSaid(step);
  const typed = said.flatMap((each) => (each.kind === 'point' ? [placedPoint(frame, each.point)] : []));
  if (typed.length > 0) return typed;
  const { ends } = frame.part;
  const end = said.find(
    (each, i) =>
      each.kind === 'word' && isWord(said[i - 1], 'along') && (each.word === ends?.from || each.word === ends?.to),
  );
  if (end?.kind !== 'word') return [];
  const x = (frame.bounds.length / 2 + (pastEdge(step) ?? 0)) * (end.word === ends?.from ? -1 : 1);
  const y = frame.bounds.width / 2;
  return [
    { x, y: -y },
    { x, y },
  ];
}

const isWord = (each: ReturnType<typeof allSaid>[number] | undefined, word: string): boolean =>
  each?.kind === 'word' && each.word === word;
