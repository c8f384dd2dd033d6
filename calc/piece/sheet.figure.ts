import { bagSize, sheetPast, stepAt } from '../bag/bag.figure.ts';
import { JOIN_LAP } from '../cloth/habits.ts';
import { lanesFor } from '../cloth/lanes.ts';
import { sheetStretch } from '../curve/tool.figure.ts';
import { type Bench, defineFigure, ifKnown, known, quantity, text, usual, whenKnown, worked } from '../figure/index.ts';
import { stackHeight } from '../laminate/height.figure.ts';
import { type Step, UNKNOWN } from '../model/index.ts';
import { following, isImpossible } from '../outcome.ts';
import type { Contour } from '../outline/contour.ts';
import { inRecipe, partFrame } from '../outline/part.figure.ts';
import { origin } from '../outline/shape.ts';
import { clauseWith, countOf, flat as listed, subject } from '../plan/reading.ts';
import { LENGTH } from '../quantity/index.ts';
import type { FlatPiece, Mark, PieceKind } from './flat-piece.ts';
import { type Flat, grownContours } from './footprint-contour.ts';
import { acrossRoll, joinsAcross, lanesOf } from './lanes.ts';
import { measures } from './measures.ts';
import { notchesOf } from './notches.ts';

/** The sheets that are cut for a process, by the verb that lays them. */
export const SHEET_KINDS: Readonly<Record<string, PieceKind>> = {
  peel: 'peel',
  perforated: 'film',
  film: 'film',
  mesh: 'mesh',
  bleeder: 'breather',
  breather: 'breather',
  bag: 'bag',
};

/** The flat pieces of a sheet over the part: peel ply, mesh, film, breather or bag. */
export const sheetPieces = defineFigure<readonly FlatPiece[]>('sheet_pieces', (bench, path) =>
  ifKnown(stepAt(bench, path), (step) => (step.verb === 'bag' ? bagPiece(bench, step) : overPart(bench, step))),
);

function overPart(bench: Bench, step: Step) {
  const inputs = {
    frame: bench.ask(partFrame),
    past: sheetPast(bench, step),
    height: bench.ask(stackHeight),
    lap: usual(bench, JOIN_LAP),
  };
  return whenKnown(inputs, ({ frame, past, height, lap }, reasons) => {
    // past the edge it also climbs the stack
    const out = past < 0 ? past : past + height;
    return ifKnown(sheetStretch(bench, height), (stretch, curved) => {
      const placed = { shape: frame.shape, centre: origin };
      const pieces = following(grownContours({ placed, out, stretch }), (flats) =>
        flats.flatMap((flat) => parted(bench, step, flat, lap)),
      );
      const words = text('the outline, {out} past its edge and up the stack', { out: quantity(out, LENGTH) });
      return worked<readonly FlatPiece[]>(numbered(pieces, step), words, {
        at: inRecipe(bench, step.path),
        reasons: [...curved, ...reasons],
      });
    });
  });
}

type Parts = readonly { readonly cut: Contour; readonly holes: readonly Contour[]; readonly lap?: number }[];

/** Lanes lie along x, or along y where that takes fewer. */
function parted(bench: Bench, step: Step, { outer, holes }: Flat, lap: number): Parts {
  const roll = rollOf(bench, step);
  if (roll === undefined) return [{ cut: outer, holes }];
  const ways = [0, Math.PI / 2].map((way) => {
    const span = acrossRoll(outer, way);
    const lanes = lanesFor(span.high - span.low, roll, lap);
    return { way, span, lanes: isImpossible(lanes) ? Infinity : lanes.lanes };
  });
  const best = ways[1]!.lanes < ways[0]!.lanes ? ways[1]! : ways[0]!;
  const joins = best.lanes === 1 || best.lanes > 100 ? [] : joinsAcross(best.span, roll, lap);
  if (isImpossible(joins) || joins.length === 0) return [{ cut: outer, holes }];
  return lanesOf(outer, best.way, joins, lap).flatMap((pieces) => pieces.map((cut) => ({ cut, holes: [], lap })));
}

function numbered(parts: Parts | { readonly problem: string | ReturnType<typeof text> }, step: Step) {
  if ('problem' in parts) return parts;
  return parts.map(({ cut, holes, lap }, i): FlatPiece => {
    const name = step.name ?? step.verb;
    const marks = parts.length === 1 ? notchesOf(cut, origin, 0) : [];
    return {
      ...sheet(step, cut, holes, marks),
      name: parts.length === 1 ? name : `${name} ${i + 1}/${parts.length}`,
      ...(lap === undefined ? {} : { lane: { number: i + 1, of: parts.length, lap } }),
    };
  });
}

function sheet(step: Step, cut: Contour, holes: readonly Contour[], marks: readonly Mark[]): FlatPiece {
  const material = subject(step);
  const layers = clauseWith(step, 'layer', 'layers');
  return {
    name: step.name ?? step.verb,
    of: step.name ?? step.verb,
    path: step.path,
    kind: SHEET_KINDS[step.verb] ?? 'other',
    ...(material === undefined ? {} : { material }),
    count: Math.max(1, layers === undefined ? 1 : (countOf(listed(layers)) ?? 1)),
    cut,
    holes,
    darts: [],
    marks,
    drills: [],
    faceUp: true,
    mayTurn: true,
    mayMirror: true,
    ...measures(cut, holes),
  };
}

function bagPiece(bench: Bench, step: Step) {
  return ifKnown(bench.ask(bagSize), (size, reasons) => {
    const [x, y] = [size.length / 2, size.width / 2];
    const cut = [
      { x: -x, y: -y },
      { x, y: -y },
      { x, y },
      { x: -x, y },
    ];
    const piece = sheet(step, cut, [], notchesOf(cut, origin, 0));
    return known<readonly FlatPiece[]>([piece], ...reasons);
  });
}

function rollOf(bench: Bench, step: Step): number | undefined {
  const name = subject(step);
  const roll = name === undefined ? undefined : bench.material(name)?.roll?.value;
  return roll === undefined || roll === UNKNOWN ? undefined : roll.width.si;
}
