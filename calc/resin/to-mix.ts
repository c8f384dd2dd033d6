import { given, notNegative, type Outcome } from '../outcome.ts';

/** Where the resin of a part goes, kg each. */
export interface ResinNeeds {
  readonly laminate: number;
  readonly coreCuts: number;
  readonly coreSurface: number;
  readonly peel: number;
  readonly mesh: number;
  readonly tubes: number;
  /** what stays in pot and trap */
  readonly pot: number;
}

const words: Readonly<Record<keyof ResinNeeds, string>> = {
  laminate: 'the resin in the laminate',
  coreCuts: 'the resin in holes, cuts and grooves of the core',
  coreSurface: 'the resin in the surface of the core',
  peel: 'the resin in the peel ply',
  mesh: 'the resin in the mesh',
  tubes: 'the resin in the tubes',
  pot: 'the resin left in pot and trap',
};
const names = Object.keys(words) as (keyof ResinNeeds)[];

export interface ResinToMix {
  /** kg that the part and what is thrown away hold */
  readonly needed: number;
  /** kg held back unmixed until it is wanted */
  readonly allowance: number;
  readonly total: number;
}

/** Sum of all needs and the allowance on it, as a share (0.1 is 10 %). */
export function resinToMix(needs: ResinNeeds, allowance: number): Outcome<ResinToMix> {
  const demands = names.map((name) => notNegative(words[name], needs[name]));
  demands.push(notNegative('the allowance', allowance));
  return given(demands, () => {
    let needed = 0;
    for (const name of names) needed += needs[name];
    return { needed, allowance: needed * allowance, total: needed * (1 + allowance) };
  });
}
