import { type Bench, habitOf, type Usual } from '../../../calc/figure/index.ts';
import { MOST_LOST, SHORTEST_TEST } from './leak-test.ts';
import { asTyped, metres, pascals, seconds } from './shown.ts';

/*
 * What fixes write: what is usual, or what the shop wants where that is stricter. A fix that the shop's own habit calls wrong
 * mends nothing.
 */

/** The largest of a usual value and the least that the shop bears, as it is typed; m. */
export const lengthOrMore = (usual: number, least: number): string => asTyped(metres(Math.max(usual, least)));

/** The smallest of a usual value and the most that the shop bears, as it is typed; m. */
export const lengthOrLess = (usual: number, most: number): string => asTyped(metres(Math.min(usual, most)));

/** How far apart the holes of a core stand. */
export const PITCH: Usual = {
  habit: 'perforation',
  what: 'how far apart the holes of a core stand',
  value: metres(0.05),
  source: '20 to 50 mm, from memory',
};

export const usualPitch = (bench: Bench): string => lengthOrLess(0.04, habitOf(bench, PITCH));

/** The brake of peel ply only, between the mesh and the edge. */
export const BRAKE: Usual = {
  habit: 'brake',
  what: 'mesh short of the edge',
  value: metres(0.025),
  source: "builders' page: 25 to 50 mm short of the trim line",
};

export const usualBrake = (bench: Bench): string => lengthOrMore(0.04, habitOf(bench, BRAKE));

/** Shortest overlap of two pieces of a ply. */
export const OVERLAP: Usual = {
  habit: 'overlap',
  what: 'shortest overlap of two pieces',
  value: metres(0.025),
  source: '25 to 50 mm for small craft, from memory',
};

export const usualLap = (bench: Bench): string => lengthOrMore(0.05, habitOf(bench, OVERLAP));

/** A test as the trade writes it; longer and tighter where the shop wants it so. */
export function usualTest(bench: Bench): string {
  const time = Math.max(600, habitOf(bench, SHORTEST_TEST));
  const most = (habitOf(bench, MOST_LOST) * time) / 60;
  return `${asTyped(pascals(Math.min(500, Math.floor(most / 10) * 10)))} in ${asTyped(seconds(time))}`;
}
