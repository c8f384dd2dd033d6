import type { Dart } from './flat-piece.ts';

/**
 * The darts of one ply whose seams lie less than `apart` (m) from a seam of another: where they close when the cloth is laid.
 * They are compared at the free edge of the ply that reaches further: towards the face they come together anyhow. Those that take
 * out a sharp corner, or let it in, have but one place: every ply has its seam there.
 */
export function seamsOnEachOther(own: readonly Dart[], others: readonly Dart[], apart: number): readonly Dart[] {
  const curved = others.filter(({ corner }) => corner !== true);
  return own.filter((dart) => dart.corner !== true && curved.some((other) => seamsApart(dart, other) < apart - slack));
}

/** Of the darts of one ply the one whose seam lies nearest to a seam of another, and how near, m. */
export function nearestSeams(own: readonly Dart[], others: readonly Dart[]) {
  let nearest: { readonly of: Dart; readonly apart: number } | undefined;
  for (const dart of own)
    for (const other of others) {
      if (other.corner === true) continue;
      const apart = seamsApart(dart, other);
      if (nearest === undefined || apart < nearest.apart - 1e-9) nearest = { of: dart, apart };
    }
  return nearest;
}

/** Chord against arc: less than a marker's line, m. */
const slack = 0.0005;

/** Where a cut closes: from its tip to the free edge, and on from there. */
type Line = Pick<Dart, 'mouth' | 'tip' | 'depth'>;

/** How far two seams lie from each other at the free edge of the ply that reaches further, m. */
export function seamsApart(a: Line, b: Line): number {
  const depth = Math.max(a.depth, b.depth);
  const [p, q] = [at(a, depth), at(b, depth)];
  return Math.hypot(p.x - q.x, p.y - q.y);
}

function at({ mouth, tip, depth: all }: Line, depth: number): { readonly x: number; readonly y: number } {
  const share = all > 0 ? depth / all : 0;
  return { x: tip.x + share * (mouth.x - tip.x), y: tip.y + share * (mouth.y - tip.y) };
}
