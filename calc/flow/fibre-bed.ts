import { demand, fraction, given, type Outcome, positive } from '../outcome.ts';

/**
 * Permeability (m2) along aligned fibres of radius `radius` (m) by Kozeny and Carman: r2 / (4 k0) (1-Vf)3 / Vf2, with
 * k0 0.7 along (Gutowski 1987). Real cloth lets 5 to 20 times more through its gaps: use it to scale with the fibre
 * fraction.
 */
export function kozenyCarman(radius: number, byVolume: number, constant = 0.7): Outcome {
  return given(
    [
      positive('the radius of the fibre', radius),
      fraction('the fibre fraction by volume', byVolume),
      positive('the constant of Kozeny', constant),
    ],
    () => ((radius * radius) / (4 * constant)) * ((1 - byVolume) ** 3 / byVolume ** 2),
  );
}

/**
 * Permeability (m2) of aligned fibres along and across; square packing. Source: Gebart 1992, J. Compos. Mater. 26,
 * 1100.
 */
export function gebart(radius: number, byVolume: number): Outcome<{ readonly along: number; readonly across: number }> {
  const most = Math.PI / 4;
  return given(
    [
      positive('the radius of the fibre', radius),
      fraction('the fibre fraction by volume', byVolume),
      demand(byVolume <= most, 'fibres in square packing fill no more than 78.5 % by volume'),
    ],
    () => ({
      along: ((8 * radius * radius) / 57) * ((1 - byVolume) ** 3 / byVolume ** 2),
      across: (16 / (9 * Math.PI * Math.SQRT2)) * (Math.sqrt(most / byVolume) - 1) ** 2.5 * radius * radius,
    }),
  );
}
