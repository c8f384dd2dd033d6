import type { Point } from '../outline/shape.ts';
import { mirroredAboutX, transformed, transformedLine } from '../outline/transform.ts';
import type { FlatPiece } from './flat-piece.ts';

const over = ({ x, y }: Point): Point => ({ x, y: y === 0 ? 0 : -y });

/** The same piece for the other hand of a part: mirrored about its long axis, the way of its roll too. */
export function otherHand(piece: FlatPiece): FlatPiece {
  return {
    ...piece,
    cut: transformed(piece.cut, mirroredAboutX),
    holes: piece.holes.map((hole) => transformed(hole, mirroredAboutX)),
    darts: piece.darts.map((dart) => ({ ...dart, mouth: over(dart.mouth), tip: over(dart.tip) })),
    marks: piece.marks.map((mark) => ({
      ...mark,
      line: mark.closed ? transformed(mark.line, mirroredAboutX) : transformedLine(mark.line, mirroredAboutX),
    })),
    drills: piece.drills.map((drill) => ({ ...drill, at: over(drill.at) })),
    ...(piece.grain === undefined ? {} : { grain: -piece.grain }),
  };
}

/** The pieces of all hands of a part: as drawn for the first, mirrored for the second. */
export function forHands(pieces: readonly FlatPiece[], hands: readonly string[] | undefined): readonly FlatPiece[] {
  if (hands === undefined || hands.length < 2) return pieces;
  return hands.flatMap((hand, i) =>
    pieces.map((piece) => ({ ...(i % 2 === 1 ? otherHand(piece) : piece), name: `${piece.name} ${hand}`, hand })),
  );
}
