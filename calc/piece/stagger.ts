import type { BendNeed } from '../cloth/darts.ts';
import { type EdgeStretch, footInBend } from './edge-turns.ts';
import type { Dart } from './flat-piece.ts';
import { type DartShape, isCorner, mouthOf, type Phase } from './place-darts.ts';

/** Tried in this order: even first, then further and further to one side and to the other. */
const phases = [0.5, 0.25, 0.75, 0.125, 0.875, 0, 1 / 3, 2 / 3];

/**
 * Where the darts of a ply begin along each bend so that they do not lie above those of the plies next to it: the first phase that
 * leaves cloth between them, else the one with which they overlap least.
 */
export function phaseAway(
  stretches: readonly EdgeStretch[],
  bends: readonly BendNeed[],
  shape: DartShape,
  others: readonly Dart[],
): Phase {
  const away = others.map((dart) => ({ ...mouthOf(dart, shape), half: halfWidth(dart) }));
  const found = bends.map((bend) => {
    if (away.length === 0 || bend.darts + bend.slits === 0 || isCorner(bend, shape)) return 0.5;
    let best: { readonly phase: number; readonly over: number } | undefined;
    for (const phase of phases) {
      const over = overlapAt(stretches, bend, shape, phase, away);
      if (best === undefined || over < best.over - 1e-9) best = { phase, over };
      if (over === 0) break;
    }
    return best?.phase ?? 0.5;
  });
  return (bend) => found[bend] ?? 0.5;
}

const halfWidth = ({ width, lap }: Dart) => Math.max(width, lap ?? 0) / 2;

/** How much too near to others the darts of a bend lie, all together, m. */
function overlapAt(
  stretches: readonly EdgeStretch[],
  bend: BendNeed,
  { reach, gap }: DartShape,
  phase: number,
  others: readonly { readonly x: number; readonly y: number; readonly half: number }[],
): number {
  const count = bend.darts + bend.slits;
  const own = bend.turn > 0 ? bend.width / 2 : 0;
  let over = 0;
  for (let k = 0; k < count; k++) {
    const foot = footInBend(stretches, bend, (k + phase) / count);
    if (foot === undefined) continue;
    const x = foot.at.x + reach * Math.cos(foot.outward);
    const y = foot.at.y + reach * Math.sin(foot.outward);
    for (const other of others) over += Math.max(0, gap + own + other.half - Math.hypot(other.x - x, other.y - y));
  }
  return over;
}
