import type { Contour, Vertex } from '../outline/contour.ts';
import type { Dart } from './flat-piece.ts';
import { onceRound, placeNear, pointAt, rimOf, wayBetween } from './rim.ts';

/** A mouth that lies further from the rim than this is not on it, m: it was cut off with another lane. */
const onRim = 1e-6;

/** The darts whose mouths lie on a contour. */
export const dartsOn = (contour: Contour, darts: readonly Dart[]): readonly Dart[] =>
  darts.filter(({ mouth }) => placeNear(rimOf(contour), mouth).distance <= onRim);

/**
 * A contour with darts and slits cut in: for a dart the stretch of its width round its mouth is left out, and the line goes
 * to the tip and back; a slit is walked in and out on the same line.
 */
export function withDarts(contour: Contour, darts: readonly Dart[]): Contour {
  if (darts.length === 0) return contour;
  const own = cutIn.get(darts) ?? new WeakMap<Contour, Contour>();
  cutIn.set(darts, own);
  const before = own.get(contour);
  if (before !== undefined) return before;
  const cut = cutWith(contour, darts);
  own.set(contour, cut);
  return cut;
}

const cutIn = new WeakMap<readonly Dart[], WeakMap<Contour, Contour>>();

function cutWith(contour: Contour, darts: readonly Dart[]): Contour {
  const rim = rimOf(contour);
  const cuts = darts
    .map((dart) => ({ dart, place: placeNear(rim, dart.mouth).place }))
    .sort((a, b) => a.place - b.place);
  const line: Vertex[] = [];
  cuts.forEach(({ dart, place }, i) => {
    const next = cuts[(i + 1) % cuts.length]!;
    line.push({ ...pointAt(rim, place - dart.width / 2) }, { x: dart.tip.x, y: dart.tip.y });
    const from = place + dart.width / 2;
    const to = next.place - next.dart.width / 2;
    const once = onceRound(to - from, rim.length);
    // edge to edge: less than a hair between two darts, forwards or backwards, is nothing
    const way = cuts.length === 1 ? rim.length - dart.width : once > rim.length - 1e-9 ? 0 : once;
    if (way > 1e-9) line.push(...wayBetween(rim, from, from + way).slice(0, -1));
    else line.push(pointAt(rim, from));
  });
  return line;
}
