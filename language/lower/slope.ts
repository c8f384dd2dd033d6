import type { Amount } from '../../calc/model/index.ts';
import { isProblem, makeQuantity } from '../../calc/quantity/index.ts';
import type { Read } from './arguments.ts';

const INCH = 0.0254;

/**
 * A slope as the trade says it: `3:1`, `1:3`, `1 in 3`. Which number stands first differs from shop to shop; no edge is
 * made steeper than it is high, so the longer one is the run.
 */
export function slopeOf(values: readonly Read[]): Amount | undefined {
  const pair = pairOf(values);
  if (pair === undefined || !(Math.min(...pair) > 0)) return undefined;
  const angle = makeQuantity((Math.atan(Math.min(...pair) / Math.max(...pair)) * 180) / Math.PI, 'deg');
  return isProblem(angle) ? undefined : angle;
}

function pairOf([first, second]: readonly Read[]): readonly [number, number] | undefined {
  if (first?.argument.kind === 'ratio') {
    const [a, b] = first.argument.parts;
    return a === undefined || b === undefined || first.argument.parts.length > 2 ? undefined : [a, b];
  }
  // `1 in 3` is read as an inch and a bare number
  if (first?.argument.kind !== 'amount' || second?.argument.kind !== 'amount') return undefined;
  const [rise, run] = [first.argument.amount, second.argument.amount];
  return rise.unit === 'in' && run.unit === undefined ? [rise.si / INCH, run.si] : undefined;
}
