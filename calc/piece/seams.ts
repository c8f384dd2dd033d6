import type { Dart } from './flat-piece.ts';

/** A dart as wide as it is deep takes out a sharp corner, a slit that opens as wide one lets it in: every ply has its seam there. */
const isCornerDart = ({ width, opens = 0, depth }: Dart): boolean => Math.max(width, opens) > depth;

/**
 * The darts of one ply whose seams lie less than `apart` (m) from a seam of another: where they close when the cloth is laid.
 * They are compared at the free edge of the ply that reaches further: towards the face they come together anyhow. Those that take out a sharp corner have but one place.
 */
export function seamsOnEachOther(own: readonly Dart[], others: readonly Dart[], apart: number): readonly Dart[] {
  const curved = others.filter((dart) => !isCornerDart(dart));
  return own.filter((dart) => !isCornerDart(dart) && curved.some((other) => seamsApart(dart, other) < apart - slack));
}

/** Chord against arc: less than a marker's line, m. */
const slack = 0.0005;

function seamsApart(a: Dart, b: Dart): number {
  const depth = Math.max(a.depth, b.depth);
  const [p, q] = [at(a, depth), at(b, depth)];
  return Math.hypot(p.x - q.x, p.y - q.y);
}

function at({ mouth, tip, depth: all }: Dart, depth: number): { readonly x: number; readonly y: number } {
  const share = all > 0 ? depth / all : 0;
  return { x: tip.x + share * (mouth.x - tip.x), y: tip.y + share * (mouth.y - tip.y) };
}
