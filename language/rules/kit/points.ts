import type { Quantity } from '../../../calc/quantity/index.ts';
import { metres } from './shown.ts';

/** A place as it is told in a finding, `({x}, {y})`: whole millimetres from the middle of the part. */
export const placeShown = ({ x, y }: { readonly x: number; readonly y: number }): { x: Quantity; y: Quantity } => ({
  x: metres(rounded(x)),
  y: metres(rounded(y)),
});

const rounded = (si: number): number => Math.round(si * 1000) / 1000 + 0;
