import { finite, given, notNegative, type Outcome } from '../outcome.ts';

/** A ply that runs over an edge: how far its flat piece reaches past the outline, and how much of it lands; metres. */
export interface Overhang {
  readonly reach: number;
  readonly landing: number;
}

/** The least that is said of a bend: its turn in rad (positive where the outline bulges) and its length in m. */
export interface Bend {
  readonly turn: number;
  readonly length: number;
}

/**
 * Length (m) that the free edge of a wrapped ply has too much on a stretch turning by `turn` (rad): turn (reach +
 * landing). The free edge lies `reach` outside the outline while flat and `landing` inside it when laid. Negative on a
 * stretch that turns inwards: there it is too short. All round any closed outline it adds up to 2 pi (reach + landing).
 */
export function excessLength(turn: number, { reach, landing }: Overhang): Outcome {
  return given(
    [finite('the turn', turn), notNegative('the reach', reach), notNegative('the landing', landing)],
    () => turn * (reach + landing),
  );
}
